import { Fragment } from 'preact'
import { useRef, useState } from 'preact/hooks'
import { removePoint, setPoint, shownRows } from '../../job/edits.ts'
import { fanName } from '../../job/fans.ts'
import { fansIn, setFan } from '../../job/fans-edit.ts'
import { reasonOf } from '../../job/left-out.ts'
import type { Device, Test, TypedFanReading, TypedPoint, TypedSheet } from '../../job/schema.ts'
import { flowWords } from '../../results/unit-words.ts'
import { Icon } from '../parts/icons.tsx'
import { Baseline } from './baseline.tsx'
import type { Desk } from './context.ts'
import { longest } from './field.tsx'
import { Finding } from './finding.tsx'
import { pasteFans } from './paste-fans.ts'
import { say } from '../../words/say.ts'

interface Props {
  sheet: TypedSheet
  units: Test['units']
  devices: readonly Device[]
  /** Each reading brought to the reference pressure, as written; empty where it cannot be. */
  brought: readonly string[]
  /** The row the one-point result is from. */
  used: number | undefined
  mean: string
  found: (path: string) => string | undefined
  unfinished: ReadonlySet<string>
  onPoints: (change: (points: TypedPoint[]) => TypedPoint[]) => void
  onBaseline: (patch: Partial<TypedSheet>) => void
  onDeleted: (row: number, point: TypedPoint) => void
  offerUndo: Desk['offerUndo']
  /** Says what of a pasted table was not taken. */
  setTold: (words: string) => void
}

/** The cell that an event comes from. */
function placeOf(event: Event): { row: number; column: string } | undefined {
  const { row, column } = (event.target as HTMLElement).dataset
  return row === undefined || column === undefined ? undefined : { row: Number(row), column }
}

const fanAt = (column: string): number => Number(/\d+$/.exec(column)?.[0])

/** The readings of several fans, a line for each fan of a point. Enter and the arrows move between lines. */
export function FansTable(props: Props) {
  const { sheet, units, devices, brought, used, mean, found, unfinished, onPoints, onBaseline } = props
  const table = useRef<HTMLTableElement>(null)
  const [typing, setTyping] = useState<number>()
  const fans = sheet.fans ?? []
  const rows = shownRows(sheet.points)
  const ranged = fans.some(({ reading }) => reading === 'device')
  const columns = ranged ? 6 : 5
  const ducts = sheet.subject === 'ducts'
  const told = (row: number, path: string) => (row === typing && unfinished.has(path) ? undefined : found(path))
  const focusCell = (row: number, column: string): boolean => {
    const cell = table.current?.querySelector<HTMLElement>(`[data-row="${row}"][data-column="${column}"]`)
    cell?.focus()
    return cell !== null && cell !== undefined
  }

  const onDelete = (row: number) => {
    const gone = sheet.points[row]
    if (!gone) return
    onPoints((points) => removePoint(points, row))
    props.onDeleted(row, gone)
    focusCell(Math.max(0, row - 1), 'pressure')
  }

  const onKeyDown = (event: KeyboardEvent) => {
    const place = placeOf(event)
    if (!place || event.isComposing) return
    const up = event.key === 'ArrowUp' || (event.key === 'Enter' && event.shiftKey)
    const down = event.key === 'ArrowDown' || (event.key === 'Enter' && !event.shiftKey)
    if (!up && !down) return
    if (event.target instanceof HTMLSelectElement && event.key !== 'Enter') return
    event.preventDefault()
    const by = up ? -1 : 1
    if (place.column === 'pressure') {
      focusCell(place.row + by, 'pressure')
      return
    }
    const kind = place.column.replace(/\d+$/, '')
    const next = fanAt(place.column) + by
    if (next >= 0 && next < fans.length) {
      if (!focusCell(place.row, `${kind}${next}`)) focusCell(place.row, `reading${next}`)
    } else focusCell(place.row + by, `${kind}${up ? fans.length - 1 : 0}`)
  }

  const onPaste = (event: ClipboardEvent) => {
    const place = placeOf(event)
    const text = event.clipboardData?.getData('text/plain') ?? ''
    if (!place || !/[\t\n\r;|]/.test(text.trim()) || text.length > 1_000_000) return
    event.preventDefault()
    pasteFans(text, place.row, sheet, { write: onPoints, offerUndo: props.offerUndo, setTold: props.setTold })
  }

  const range = (row: number, at: number, cells: TypedFanReading) => {
    const device = devices.find(({ id }) => id === fans[at]?.device)
    const names = [...new Set(device?.ranges.map(({ name }) => name).filter(Boolean))]
    const cell = {
      class: 'in',
      'data-row': row,
      'data-column': `range${at}`,
      'aria-label': say`Range, point ${row + 1}, ${fanName(fans[at]!, at)}`,
      value: cells.range,
    }
    if (names.length === 0) {
      return (
        <input
          {...cell}
          autocomplete="off"
          maxLength={longest}
          onInput={(event) => write(row, at, { range: event.currentTarget.value })}
        />
      )
    }
    return (
      <select {...cell} onChange={(event) => write(row, at, { range: event.currentTarget.value })}>
        <option value="">–</option>
        {cells.range && !names.includes(cells.range) && <option value={cells.range}>{cells.range}</option>}
        {names.map((name) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </select>
    )
  }
  const write = (row: number, at: number, patch: Partial<TypedFanReading>) =>
    onPoints((points) => setFan(points, row, at, patch))

  return (
    <table
      class="t rd fans"
      ref={table}
      onKeyDown={onKeyDown}
      onPaste={onPaste}
      onFocusIn={(event) => setTyping(placeOf(event)?.row)}
      onFocusOut={() => setTyping(undefined)}
    >
      <thead>
        <tr>
          <th class="no" scope="col">
            <span class="vh">{say`Point`}</span>
          </th>
          <th class="num c-pressure" scope="col">
            {ducts ? say`Duct pressure` : say`House pressure`}
            <br />
            Pa
          </th>
          <th scope="col">{say`Fan`}</th>
          <th class="num" scope="col">{say`Reading`}</th>
          {ranged && <th scope="col">{say`Range`}</th>}
          <th class="num cp" scope="col">
            {say`brought to ${ducts ? 25 : 50} Pa`}
            <br />
            {flowWords[units.flow]}
          </th>
        </tr>
      </thead>
      {rows.map((point, row) => {
        const left = reasonOf(point)
        const readings = fansIn(point, fans.length)
        const findings = [
          `points.${row}`,
          `points.${row}.pressure`,
          ...fans.flatMap((_, at) =>
            ['flow', 'devicePressure', 'range'].map((cell) => `points.${row}.fans.${at}.${cell}`),
          ),
        ].flatMap((path) => {
          const text = told(row, path)
          return text ? [{ path, text, id: `found-${path.replaceAll('.', '-')}` }] : []
        })
        const about = (path: string) => {
          const finding = findings.find((one) => one.path === path)
          return { 'aria-invalid': finding ? true : undefined, 'aria-describedby': finding?.id }
        }
        return (
          // oxlint-disable-next-line react/no-array-index-key -- a reading has no id of its own; its place is what it is
          <tbody key={row}>
            {fans.map((fan, at) => {
              const byDevice = fan.reading === 'device'
              const key = byDevice ? 'devicePressure' : 'flow'
              const unit = byDevice ? 'Pa' : flowWords[units.flow]
              return (
                // oxlint-disable-next-line react/no-array-index-key -- as above
                <tr key={at}>
                  {at === 0 && (
                    <Fragment>
                      <th scope="rowgroup" class="no" rowSpan={fans.length}>
                        <span>{row + 1}</span>
                        {row < sheet.points.length && (
                          <button
                            type="button"
                            class="ib"
                            aria-label={say`Delete point ${row + 1}`}
                            onClick={() => onDelete(row)}
                          >
                            <Icon name="x" />
                          </button>
                        )}
                      </th>
                      <td class="c-pressure" rowSpan={fans.length}>
                        <input
                          class="in"
                          data-row={row}
                          data-column="pressure"
                          inputMode="decimal"
                          autocomplete="off"
                          maxLength={longest}
                          aria-label={
                            say`${ducts ? say`Duct pressure` : say`House pressure`}, point ${row + 1}` + ', Pa'
                          }
                          {...about(`points.${row}.pressure`)}
                          value={point.pressure}
                          onInput={(event) => {
                            const pressure = event.currentTarget.value
                            onPoints((points) => setPoint(points, row, { pressure }))
                          }}
                        />
                      </td>
                    </Fragment>
                  )}
                  <th scope="row" class="fan">
                    {fanName(fan, at)}
                    <span class="un">, {unit}</span>
                  </th>
                  <td class={`c-${key}`}>
                    <input
                      class="in"
                      data-row={row}
                      data-column={`reading${at}`}
                      inputMode="decimal"
                      autocomplete="off"
                      maxLength={longest}
                      placeholder={say`off`}
                      aria-label={
                        byDevice
                          ? say`Device pressure, point ${row + 1}, ${fanName(fan, at)}, Pa`
                          : say`Flow, point ${row + 1}, ${fanName(fan, at)}, ${unit}`
                      }
                      {...about(`points.${row}.fans.${at}.${key}`)}
                      value={readings[at]![key]}
                      onInput={(event) => write(row, at, { [key]: event.currentTarget.value })}
                    />
                  </td>
                  {ranged && <td class="c-range">{byDevice && range(row, at, readings[at]!)}</td>}
                  {at === 0 && (
                    <td class="num cp" rowSpan={fans.length}>
                      {used === row && (
                        <span class="used" title={say`The figures stand on this point.`}>
                          {say`used`}
                        </span>
                      )}
                      {left ? <span class="q">{say`left out`}</span> : brought[row] || <span class="q">–</span>}
                    </td>
                  )}
                </tr>
              )
            })}
            {(findings.length > 0 || left) && (
              <tr class="fnd">
                <td colSpan={columns}>
                  {left && (
                    <p class="left-out">
                      {say`Left out: ${left}`}{' '}
                      <button
                        type="button"
                        class="link"
                        onClick={() => onPoints((points) => setPoint(points, row, { leftOut: '' }))}
                      >
                        {say`Take point ${row + 1} back`}
                      </button>
                    </p>
                  )}
                  {findings.map(({ id, text }) => (
                    <Finding key={id} id={id} text={text} />
                  ))}
                </td>
              </tr>
            )}
          </tbody>
        )
      })}
      <Baseline sheet={sheet} mean={mean} columns={columns} found={found} fixed={false} onType={onBaseline} />
    </table>
  )
}
