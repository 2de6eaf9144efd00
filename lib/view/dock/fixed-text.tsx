import { optionsOf } from '../../form/page/clues.ts'
import type { Control } from '../../form/page/controls.ts'
import { checked, notChecked } from '../../form/tick-words.ts'
import { optionKinds, proseKinds, several, severalKinds, tickKinds } from '../../form/kind-traits.ts'
import { Pick } from './pick.tsx'
import { tickWords } from './tick-words.ts'
import { say } from '../../words/say.ts'

interface FixedTextProps {
  control: Control
  text: string
  onText: (text: string) => void
}

/** What a fixed text begins with: a tick is on or off, and who binds one wants it on. */
export const firstText = ({ kind }: Control): string => (tickKinds.has(kind) ? checked : '')

/** The same text for every job, in the way that the control takes it: lines, one of its options, several, or a tick. */
export function FixedText({ control, text, onText }: FixedTextProps) {
  const { kind } = control
  const label = say`Text to enter`
  if (tickKinds.has(kind)) {
    const options = [checked, notChecked].map((each) => ({ value: each, label: tickWords(each) }))
    return <Pick wide label={label} value={text} options={options} onChange={onText} />
  }
  const options = optionKinds.has(kind) ? optionsOf(control).filter(Boolean) : []
  if (options.length > 0 && severalKinds.has(kind)) {
    const chosen = new Set(several(text))
    return (
      <fieldset class="several">
        <legend class="lab">{label}</legend>
        {options.map((option) => (
          <label key={option} class="tick">
            <input
              type="checkbox"
              checked={chosen.has(option)}
              onChange={({ currentTarget }) =>
                onText(
                  options.filter((each) => (each === option ? currentTarget.checked : chosen.has(each))).join('; '),
                )
              }
            />{' '}
            {option}
          </label>
        ))}
      </fieldset>
    )
  }
  if (options.length > 0) {
    const offered = [...new Set(['', ...options])].map((each) => ({ value: each, label: each || say`choose` }))
    return <Pick wide label={label} value={text} options={offered} onChange={onText} />
  }
  return (
    <label class="fixed">
      <span class="lab">{label}</span>
      {proseKinds.has(kind) ? (
        <textarea class="box" rows={4} value={text} onInput={(event) => onText(event.currentTarget.value)} />
      ) : (
        <input class="box" value={text} onInput={(event) => onText(event.currentTarget.value)} />
      )}
    </label>
  )
}
