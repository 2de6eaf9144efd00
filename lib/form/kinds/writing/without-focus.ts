import { send, sendInput, sendLeft, setValue, type Valued } from './events.ts'
import { say } from '../../../words/say.ts'

/**
 * Writes at once and without the focus, while the person types in another field of the page: a key that comes while the
 * focus is away would be lost. The page hears that the field was left, for some check it only then.
 */
export function writeWithoutFocus(field: Valued, text: string): string | undefined {
  if (field.maxLength >= 0 && text.length > field.maxLength)
    return say`takes ${field.maxLength} characters at most, this is ${text.length}`
  const before = field.value
  setValue(field, text)
  // A field for numbers empties itself at anything else.
  if (field.value === '' && text !== '') {
    setValue(field, before)
    return say`“${text}” is not a plain number`
  }
  sendInput(field, text)
  send(field, 'change')
  sendLeft(field)
  return undefined
}
