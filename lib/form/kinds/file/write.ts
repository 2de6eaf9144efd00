import type { Control } from '../../page/controls.ts'
import { gate } from '../../page/gate.ts'
import { send } from '../writing/events.ts'
import { say } from '../../../words/say.ts'

/** Puts a file into a file control, as dropping it there would. */
export function writeFile({ element }: Control, name: string, file?: File): string | undefined {
  const input = element as HTMLInputElement
  gate(input)
  if (name === '') {
    input.value = ''
  } else {
    if (!file) return say`bind a file to this control: a text cannot go into it`
    const data = new DataTransfer()
    data.items.add(file)
    input.files = data.files
  }
  send(input, 'input')
  send(input, 'change')
  return undefined
}
