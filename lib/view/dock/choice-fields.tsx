import { optionsOf } from '../../form/page/clues.ts'
import type { Control } from '../../form/page/controls.ts'
import { tickKinds } from '../../form/kind-traits.ts'
import type { Item } from '../../form/material.ts'
import { checked, notChecked } from '../../form/tick-words.ts'
import type { Write } from '../../form/schema.ts'
import { Pick } from './pick.tsx'
import { tickWords } from './tick-words.ts'
import { say, shown } from '../../words/say.ts'

interface Value {
  value: string
  label: string
  /** It is what this job has. */
  now: boolean
}

interface ChoiceFieldsProps {
  item: Extract<Item, { kind: 'choice' | 'text' }>
  write: Write
  control: Control
  onChange: (write: Write) => void
}

/** What the item may be: the answers of a choice; of a text, the one of this job and those that the list has. */
function valuesOf(item: ChoiceFieldsProps['item'], choices: Readonly<Record<string, string>>): Value[] {
  if (item.kind === 'choice')
    return item.options.map(({ value, label }) => ({ value, label: shown(label), now: value === item.value }))
  const texts = new Set([item.text, ...Object.keys(choices)].filter(Boolean))
  return [...texts].map((text) => ({ value: text, label: text, now: text === item.text }))
}

/** Which option of the page stands for which value; for a text control, which words do. */
export function ChoiceFields({ item, write, control, onChange }: ChoiceFieldsProps) {
  const choices = write.choices ?? {}
  const set = (value: string, to: string) => {
    const { [value]: _, ...rest } = choices
    onChange({ ...write, choices: to ? { ...rest, [value]: to } : rest })
  }
  const onPage = tickKinds.has(control.kind) ? [checked, notChecked] : optionsOf(control).filter(Boolean)

  return (
    <table class="t choices">
      <thead>
        <tr>
          <th>{say`When it is`}</th>
          <th>{onPage.length > 0 ? say`choose on the page` : say`write`}</th>
        </tr>
      </thead>
      <tbody>
        {valuesOf(item, choices).map((option) => (
          <tr key={option.value} class={option.now ? 'here' : ''}>
            <th scope="row">{option.label}</th>
            <td>
              {onPage.length > 0 ? (
                <Pick
                  hidden
                  label={say`Option for ${option.label}`}
                  value={choices[option.value] ?? ''}
                  options={[
                    { value: '', label: say`find it by its words` },
                    ...onPage.map((each) => ({ value: each, label: tickWords(each) })),
                  ]}
                  onChange={(to) => set(option.value, to)}
                />
              ) : (
                <input
                  class="box"
                  aria-label={say`Words for ${option.label}`}
                  placeholder={option.label}
                  value={choices[option.value] ?? ''}
                  onInput={(event) => set(option.value, event.currentTarget.value)}
                />
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
