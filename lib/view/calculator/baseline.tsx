import { Finding } from './finding.tsx'
import { longest } from './field.tsx'
import { useBench } from './use-context.ts'

interface Props {
  /** The mean of before and after as written, or empty. */
  mean: string
  columns: number
}

/** Pressures at zero flow, before and after. Several may stand in one cell. */
export function Baseline({ mean, columns }: Props) {
  const { test, editSheet, found } = useBench()
  const cells = [
    ['baselineBefore', 'before'],
    ['baselineAfter', 'after'],
  ] as const
  const findings = cells.flatMap(([key]) => {
    const text = found.get(key)
    return text ? [[key, text] as const] : []
  })
  return (
    <tfoot>
      <tr>
        <td colSpan={columns}>
          <div class="bl">
            <span>Baseline</span>
            {cells.map(([key, words]) => (
              <label key={key}>
                {words}
                <input
                  class="in"
                  aria-label={`Baseline ${words}, Pa; several may be typed, with spaces between`}
                  aria-invalid={found.has(key) ? true : undefined}
                  aria-describedby={found.has(key) ? `found-${key}` : undefined}
                  autocomplete="off"
                  maxLength={longest}
                  data-baseline={key}
                  value={test.sheet[key]}
                  onInput={(event) => editSheet({ [key]: event.currentTarget.value })}
                />
              </label>
            ))}
            {mean && <output>mean {mean} Pa</output>}
          </div>
          {findings.map(([key, text]) => (
            <Finding key={key} id={`found-${key}`} text={text} />
          ))}
        </td>
      </tr>
    </tfoot>
  )
}
