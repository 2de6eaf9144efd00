import { reasonOf } from '../../job/left-out.ts'
import type { TypedPoint } from '../../job/schema.ts'
import { say } from '../../words/say.ts'
import { Icon } from '../parts/icons.tsx'
import { stepped } from './stepped.ts'
import { longest } from './field.tsx'
import { Finding } from './finding.tsx'

export type ReadingColumn = 'pressure' | 'flow' | 'devicePressure' | 'range'

export interface ColumnHead {
  key: ReadingColumn
  title: string
  unit: string
}

interface Props {
  row: number
  point: TypedPoint
  columns: readonly ColumnHead[]
  /** Names of the ranges of the chosen device; empty: the range is typed. */
  ranges: readonly string[]
  /** The reading brought to the reference pressure, as written, or empty. */
  brought: string
  used: boolean
  found: (path: string) => string | undefined
  /** Whether the row can be deleted: the blank one at the end cannot. */
  deletable: boolean
  fixed: boolean
  onType: (row: number, column: ReadingColumn, text: string) => void
  onDelete: (row: number) => void
  /** Takes a row that was left out of the figures back in. */
  onTakeBack: (row: number) => void
}

/** One reading. What was found about a cell opens under the row. */
export function ReadingRow(props: Props) {
  const { row, point, columns, ranges, brought, used, found, deletable, fixed, onType, onDelete, onTakeBack } = props
  const number = row + 1
  const left = reasonOf(point)
  const findings = [...columns.map(({ key }) => key), ''].flatMap((key) => {
    const text = found(key ? `points.${row}.${key}` : `points.${row}`)
    return text ? [{ key, text, id: `found-${row}-${key || 'row'}` }] : []
  })
  // The row that waits for the next point is no detour on the way from the last reading to the buttons.
  const typed = [point.pressure, point.flow, point.devicePressure].some((text) => text.trim() !== '')
  return (
    <>
      <tr>
        <th scope="row" class="no">
          <span>{number}</span>
          {deletable && (
            <button type="button" class="ib" aria-label={say`Delete point ${number}`} onClick={() => onDelete(row)}>
              <Icon name="x" />
            </button>
          )}
        </th>
        {columns.map(({ key, title, unit }) => {
          const finding = findings.find((one) => one.key === key)
          const cell = {
            class: 'in',
            part: 'input',
            value: point[key],
            'data-row': row,
            'data-column': key,
            'aria-label': say`${title}, point ${number}` + (unit && `, ${unit}`),
            'aria-invalid': finding ? true : undefined,
            'aria-describedby': finding?.id,
          } as const
          return (
            <td key={key} class={`c-${key}`}>
              {key === 'range' && ranges.length > 0 ? (
                <select
                  {...cell}
                  tabIndex={typed ? 0 : -1}
                  disabled={fixed}
                  onChange={(event) => onType(row, key, event.currentTarget.value)}
                >
                  <option value="">–</option>
                  {point.range && !ranges.includes(point.range) && <option value={point.range}>{point.range}</option>}
                  {ranges.map((name) => (
                    <option key={name} value={name}>
                      {name}
                    </option>
                  ))}
                </select>
              ) : (
                <input
                  {...cell}
                  inputMode={key === 'range' ? 'text' : 'decimal'}
                  autocomplete="off"
                  readOnly={fixed}
                  maxLength={longest}
                  onInput={(event) => onType(row, key, event.currentTarget.value)}
                />
              )}
              {key === 'pressure' && !fixed && (
                <span class="thumbs">
                  {([-1, 1] as const).map((by) => (
                    <button
                      key={by}
                      type="button"
                      class="ib"
                      aria-label={by < 0 ? say`1 Pa less, point ${number}` : say`1 Pa more, point ${number}`}
                      onClick={() => onType(row, key, stepped(point.pressure, by))}
                    >
                      {by < 0 ? '−' : '+'}
                    </button>
                  ))}
                </span>
              )}
            </td>
          )
        })}
        <td class="num cp">
          {used && (
            <span class="used" title={say`The figures stand on this point.`}>
              {say`used`}
            </span>
          )}
          {left ? <span class="q">{say`left out`}</span> : brought || <span class="q">–</span>}
        </td>
      </tr>
      {(findings.length > 0 || left) && (
        <tr class="fnd">
          <td colSpan={columns.length + 2}>
            {left && (
              <p class="left-out">
                {say`Left out: ${left}`}{' '}
                {!fixed && (
                  <button type="button" class="link" onClick={() => onTakeBack(row)}>
                    {say`Take point ${number} back`}
                  </button>
                )}
              </p>
            )}
            {findings.map(({ id, text }) => (
              <Finding key={id} id={id} text={text} />
            ))}
          </td>
        </tr>
      )}
    </>
  )
}
