import { Fragment } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { TypedPoint } from '../../job/schema.ts'
import { Baseline } from './baseline.tsx'
import { insertPoint, isBlank, removePoint, setPoint, shownRows } from './edits.ts'
import { Finding } from './finding.tsx'
import { longest } from './field.tsx'
import { placePaste } from './place-paste.ts'
import { ReadingRow, type ColumnHead, type ReadingColumn } from './reading-row.tsx'
import { firstRows, rowWindow } from './row-window.ts'
import { Section } from './section.tsx'
import { flowWords } from './unit-words.ts'
import { useBench, useDeskContext } from './use-context.ts'

interface Props {
  /** Each reading brought to the reference pressure, as written; empty where it cannot be. */
  brought: readonly string[]
  /** The row the one-point result is from. */
  used: number | undefined
  mean: string
  unfinished: ReadonlySet<string>
}

const plural = (count: number): string => `${count} ${count === 1 ? 'point' : 'points'}`

/** The readings, as a table one types in. */
export function Readings({ brought, used, mean, unfinished }: Props) {
  const { devices, offerUndo } = useDeskContext()
  const { test, editSheet, found } = useBench()
  const { sheet, units } = test
  const table = useRef<HTMLTableElement>(null)
  // Opening means typing, unless something else has the focus already.
  useEffect(() => {
    if (document.activeElement !== document.body) return
    table.current
      ?.querySelector<HTMLElement>('tbody tr:last-of-type [data-column="pressure"]')
      ?.focus({ preventScroll: true })
  }, [])
  const [shown, setShown] = useState(firstRows)
  const [told, setTold] = useState('')
  const [typing, setTyping] = useState<number>()

  const device = devices.find(({ id }) => id === sheet.device)
  const ranges = device?.ranges.map(({ name }) => name).filter(Boolean) ?? []
  const ducts = sheet.subject === 'ducts'
  const columns: ColumnHead[] = [
    { key: 'pressure', title: ducts ? 'Duct pressure' : 'House pressure', unit: 'Pa' },
    sheet.reading === 'flow'
      ? { key: 'flow', title: 'Flow', unit: flowWords[units.flow] }
      : { key: 'devicePressure', title: 'Device pressure', unit: 'Pa' },
    { key: 'range', title: 'Range', unit: '' },
  ]
  const rows = shownRows(sheet.points)
  const { rows: drawn, hidden } = rowWindow(rows.length, shown)
  const typed = sheet.points.filter((point) => !isBlank(point)).length

  const write = (change: (points: TypedPoint[]) => TypedPoint[]) => editSheet((now) => ({ points: change(now.points) }))

  const onDelete = (row: number) => {
    const gone = sheet.points[row]
    if (!gone) return
    write((points) => removePoint(points, row))
    offerUndo(`Point ${row + 1} deleted.`, () => write((points) => insertPoint(points, row, gone)))
    focusCell(Math.max(0, row - 1), 'pressure')
  }

  const focusCell = (row: number, column: string) =>
    table.current?.querySelector<HTMLElement>(`[data-row="${row}"][data-column="${column}"]`)?.focus()

  const onKeyDown = (event: KeyboardEvent) => {
    const cell = event.target as HTMLElement
    const { row, column } = cell.dataset
    if (row === undefined || column === undefined || event.isComposing) return
    const up = event.key === 'ArrowUp' || (event.key === 'Enter' && event.shiftKey)
    const down = event.key === 'ArrowDown' || (event.key === 'Enter' && !event.shiftKey)
    if (!up && !down) return
    // In a list of ranges the arrows choose.
    if (cell instanceof HTMLSelectElement && event.key !== 'Enter') return
    event.preventDefault()
    focusCell(Number(row) + (up ? -1 : 1), column)
  }

  const onFocus = (event: FocusEvent) => {
    const { row } = (event.target as HTMLElement).dataset
    setTyping(row === undefined ? undefined : Number(row))
  }

  const onPaste = async (event: ClipboardEvent) => {
    const cell = event.target as HTMLElement
    const { row, column } = cell.dataset
    const text = event.clipboardData?.getData('text/plain') ?? ''
    if (row === undefined || column === undefined) return
    const block = /[\t\n\r;|]/.test(text.trim().slice(0, longest))
    if (!block && text.length <= longest) return
    event.preventDefault()
    const { readPaste } = await import('../../job/paste.ts')
    const pasted = readPaste(text)
    const before = sheet.points
    const words = [...pasted.problems.slice(0, 3).map(({ message }) => message), pasted.more].filter(Boolean)
    if (pasted.problems.length > 3) words.push(`${pasted.problems.length - 3} more lines were not taken.`)
    if (pasted.flowUnit && pasted.flowUnit !== units.flow) {
      words.push(`The block says ${pasted.flowUnit}, this test is in ${units.flow}: switch the unit in the set-up.`)
    }
    setTold(words.join(' '))
    if (pasted.rows.length === 0) return
    write((points) => placePaste(points, Number(row), column as ReadingColumn, pasted.rows))
    offerUndo(`${plural(pasted.rows.length)} pasted.`, () => write(() => before))
  }

  const end = [device?.name, sheet.reading === 'flow' ? sheet.flowBasis : 'at the device'].filter(Boolean).join(', ')
  const summary = mean ? `${plural(typed)}, baseline ${mean} Pa` : plural(typed)

  return (
    <Section id="readings" title="Readings" summary={summary} end={end}>
      <table
        class="t rd"
        ref={table}
        onKeyDown={onKeyDown}
        onPaste={onPaste}
        onFocusIn={onFocus}
        onFocusOut={() => setTyping(undefined)}
      >
        <thead>
          <tr>
            <th class="no" scope="col">
              <span class="vh">Point</span>
            </th>
            {columns.map(({ key, title, unit }) => (
              <th key={key} class={`num c-${key}`} scope="col">
                {title}
                {unit && <br />}
                {unit}
              </th>
            ))}
            <th class="num cp" scope="col">
              brought to {ducts ? 25 : 50} Pa
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
                      {plural(hidden)} not drawn: show {Math.min(1000, hidden)} more
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
                found={(path) => (row === typing && unfinished.has(path) ? undefined : found.get(path))}
                deletable={row < sheet.points.length}
                onType={(at, column, text) => write((points) => setPoint(points, at, { [column]: text }))}
                onDelete={onDelete}
              />
            </Fragment>
          ))}
        </tbody>
        <Baseline mean={mean} columns={columns.length + 2} />
      </table>
      {told && <Finding id="found-paste" text={told} />}
    </Section>
  )
}
