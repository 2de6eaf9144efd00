import { Finding } from './finding.tsx'
import { longest } from './field.tsx'
import type { TypedSheet } from '../../job/schema.ts'
import { say } from '../../words/say.ts'

interface Props {
  sheet: Pick<TypedSheet, 'baselineBefore' | 'baselineAfter'>
  /** The mean of before and after as written, or empty. */
  mean: string
  columns: number
  found: (path: string) => string | undefined
  fixed: boolean
  onType: (patch: Partial<TypedSheet>) => void
}

/** Pressures at zero flow, before and after. Several may stand in one cell, which grows with them. */
export function Baseline({ sheet, mean, columns, found, fixed, onType }: Props) {
  const cells = [
    ['baselineBefore', say`before`],
    ['baselineAfter', say`after`],
  ] as const
  const findings = cells.flatMap(([key]) => {
    const text = found(key)
    return text ? [[key, text] as const] : []
  })
  return (
    <tfoot>
      <tr>
        <td colSpan={columns}>
          <div class="bl">
            <span>{say`Baseline`}</span>
            {cells.map(([key, words]) => (
              <label key={key}>
                {words}
                <span class="grow" data-text={sheet[key]}>
                  <textarea
                    class="in"
                    part="input"
                    rows={1}
                    aria-label={say`Baseline ${words}, Pa; several may be typed, with spaces between`}
                    aria-invalid={found(key) ? true : undefined}
                    aria-describedby={found(key) ? `found-${key}` : undefined}
                    autocomplete="off"
                    spellcheck={false}
                    maxLength={longest}
                    data-baseline={key}
                    readOnly={fixed}
                    value={sheet[key]}
                    // Of one line as typed, drawn in several; a pasted list keeps its readings apart.
                    onKeyDown={(event) => event.key === 'Enter' && !event.isComposing && event.preventDefault()}
                    onInput={(event) => onType({ [key]: event.currentTarget.value.replaceAll(/\r?\n/g, ' ') })}
                  />
                </span>
              </label>
            ))}
            {mean && <output>{say`mean ${mean} Pa`}</output>}
          </div>
          {findings.map(([key, text]) => (
            <Finding key={key} id={`found-${key}`} text={text} />
          ))}
        </td>
      </tr>
    </tfoot>
  )
}
