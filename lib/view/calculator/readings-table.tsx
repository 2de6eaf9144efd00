import { Fragment } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Test, TypedPoint, TypedSheet } from '../../job/schema.ts'
import { Baseline } from './baseline.tsx'
import { isDeletable, removePoint, setPoint, shownRows } from '../../job/edits.ts'
import { ReadingRow, type ColumnHead, type ReadingColumn } from './reading-row.tsx'
import { firstRows, rowWindow } from './row-window.ts'
import { flowWords } from '../../results/unit-words.ts'
import { say } from '../../words/say.ts'

interface Props {
  sheet: TypedSheet
  units: Test['units']
  /** Names of the ranges of the chosen device; empty: the range is typed. */
  ranges: readonly string[]
  /** Each reading brought to the reference pressure, as written; empty where it cannot be. */
  brought: readonly string[]
  /** The row the one-point result is from. */
  used: number | undefined
  mean: string
  found: (path: string) => string | undefined
  unfinished: ReadonlySet<string>
  /** Takes the focus when nothing else has it. */
  focused?: boolean
  /** Whether readings and baseline may only be looked at. */
  fixed?: { points: boolean; baseline: boolean }
  onPoints: (change: (points: TypedPoint[]) => TypedPoint[]) => void
  onBaseline: (patch: Partial<TypedSheet>) => void
  onDeleted?: (row: number, point: TypedPoint) => void
  onPaste?: (event: ClipboardEvent, row: number, column: ReadingColumn) => void
}

const plural = (count: number): string => (count === 1 ? say`1 point` : say`${count} points`)

/** The cell that an event comes from. */
function placeOf(event: Event): { row: number; column: ReadingColumn; cell: HTMLElement } | undefined {
  const cell = event.target as HTMLElement
  const { row, column } = cell.dataset
  return row === undefined || column === undefined
    ? undefined
    : { row: Number(row), column: column as ReadingColumn, cell }
}

/** The readings, as a table one types in: Enter and the arrows move between rows. */
export function ReadingsTable(props: Props) {
  const { sheet, units, ranges, brought, used, mean, found, unfinished, fixed, onPoints, onBaseline } = props
  const table = useRef<HTMLTableElement>(null)
  const [shown, setShown] = useState(firstRows)
  const [typing, setTyping] = useState<number>()
  // Opening means typing, unless something else has the focus already.
  useEffect(() => {
    if (!props.focused || document.activeElement !== document.body) return
    table.current
      ?.querySelector<HTMLElement>('tbody tr:last-of-type [data-column="pressure"]')
      ?.focus({ preventScroll: true })
  }, [])

  const ducts = sheet.subject === 'ducts'
  const columns: ColumnHead[] = [
    { key: 'pressure', title: ducts ? say`Duct pressure` : say`House pressure`, unit: 'Pa' },
    sheet.reading === 'flow'
      ? { key: 'flow', title: say`Flow`, unit: flowWords[units.flow] }
      : { key: 'devicePressure', title: say`Device pressure`, unit: 'Pa' },
    // A range belongs to a device; one that was typed before stays in sight.
    ...(ranges.length > 0 || sheet.reading === 'device' || sheet.points.some(({ range }) => range.trim() !== '')
      ? [{ key: 'range', title: say`Range`, unit: '' } as const]
      : []),
  ]
  const rows = fixed?.points ? sheet.points : shownRows(sheet.points)
  const { rows: drawn, hidden } = rowWindow(rows.length, shown)

  const focusCell = (row: number, column: string) =>
    table.current?.querySelector<HTMLElement>(`[data-row="${row}"][data-column="${column}"]`)?.focus()

  const onDelete = (row: number) => {
    const gone = sheet.points[row]
    if (!gone) return
    onPoints((points) => removePoint(points, row))
    props.onDeleted?.(row, gone)
    focusCell(Math.max(0, row - 1), 'pressure')
  }

  const onKeyDown = (event: KeyboardEvent) => {
    const place = placeOf(event)
    if (!place || event.isComposing) return
    const up = event.key === 'ArrowUp' || (event.key === 'Enter' && event.shiftKey)
    const down = event.key === 'ArrowDown' || (event.key === 'Enter' && !event.shiftKey)
    if (!up && !down) return
    // In a list of ranges the arrows choose.
    if (place.cell instanceof HTMLSelectElement && event.key !== 'Enter') return
    event.preventDefault()
    focusCell(place.row + (up ? -1 : 1), place.column)
  }

  return (
    <table
      class="t rd"
      ref={table}
      onKeyDown={onKeyDown}
      onPaste={(event) => {
        const place = placeOf(event)
        if (place) props.onPaste?.(event, place.row, place.column)
      }}
      onFocusIn={(event) => setTyping(placeOf(event)?.row)}
      onFocusOut={() => setTyping(undefined)}
    >
      <thead>
        <tr>
          <th class="no" scope="col">
            <span class="vh">{say`Point`}</span>
          </th>
          {columns.map(({ key, title, unit }) => (
            <th key={key} class={`num c-${key}`} scope="col">
              {title}
              {unit && <br />}
              {unit}
            </th>
          ))}
          <th class="num cp" scope="col">
            {say`brought to ${ducts ? 25 : 50} Pa`}
            <br />
            {flowWords[units.flow]}
          </th>
        </tr>
      </thead>
      <tbody>
        {drawn.map((row, index) => (
          <Fragment key={row}>
            {index === drawn.length - 1 && hidden > 0 && (
              <tr class="fnd">
                <td colSpan={columns.length + 2}>
                  <button type="button" class="link" onClick={() => setShown(shown + 1000)}>
                    {say`${plural(hidden)} not drawn: show ${Math.min(1000, hidden)} more`}
                  </button>
                </td>
              </tr>
            )}
            <ReadingRow
              row={row}
              point={rows[row]!}
              columns={columns}
              ranges={ranges}
              brought={brought[row] ?? ''}
              used={used === row}
              found={(path) => (row === typing && unfinished.has(path) ? undefined : found(path))}
              deletable={!fixed?.points && isDeletable(sheet.points, row)}
              fixed={fixed?.points ?? false}
              onType={(at, column, text) => onPoints((points) => setPoint(points, at, { [column]: text }))}
              onDelete={onDelete}
              onTakeBack={(at) => onPoints((points) => setPoint(points, at, { leftOut: '' }))}
            />
          </Fragment>
        ))}
      </tbody>
      <Baseline
        sheet={sheet}
        mean={mean}
        columns={columns.length + 2}
        found={found}
        fixed={fixed?.baseline ?? false}
        onType={onBaseline}
      />
    </table>
  )
}

/** The readings of a test in a line: `3 points, baseline −1.0 Pa`. */
export function readingsSummary(typed: number, mean: string): string {
  return mean ? say`${plural(typed)}, baseline ${mean} Pa` : plural(typed)
}
