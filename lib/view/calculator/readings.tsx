import { useState } from 'preact/hooks'
import type { TypedPoint } from '../../job/schema.ts'
import { symbol } from '../../units/symbol.ts'
import { insertPoint, isBlank } from '../../job/edits.ts'
import { Finding } from './finding.tsx'
import { longest } from './field.tsx'
import { later } from './later.tsx'
import { isBlock, placePaste, takeBackPaste } from './place-paste.ts'
import type { ReadingColumn } from './reading-row.tsx'
import { readingsSummary, ReadingsTable } from './readings-table.tsx'
import { Section } from './section.tsx'
import { flowBasisWords } from './setup-summary.ts'
import { areaWords, volumeWords } from '../../results/unit-words.ts'
import { useBench, useDeskContext, useFound } from './use-context.ts'
import { say } from '../../words/say.ts'

const FansTable = later(async () => (await import('./fans-table.tsx')).FansTable)

interface Props {
  /** Each reading brought to the reference pressure, as written; empty where it cannot be. */
  brought: readonly string[]
  /** The row the one-point result is from. */
  used: number | undefined
  mean: string
  unfinished: ReadonlySet<string>
}

/** The readings of the open test, with what can be taken back and pasted. */
export function Readings({ brought, used, mean, unfinished }: Props) {
  const { devices, offerUndo } = useDeskContext()
  const { test, editSheet } = useBench()
  const found = useFound()
  const { sheet, units } = test
  const [told, setTold] = useState('')

  const device = devices.find(({ id }) => id === sheet.device)
  const typed = sheet.points.filter((point) => !isBlank(point)).length
  const write = (change: (points: TypedPoint[]) => TypedPoint[]) => editSheet((now) => ({ points: change(now.points) }))

  const onPaste = async (event: ClipboardEvent, row: number, column: ReadingColumn) => {
    const text = event.clipboardData?.getData('text/plain') ?? ''
    if (!isBlock(text.slice(0, longest), column) && text.length <= longest) return
    event.preventDefault()
    const { readPaste } = await import('../../job/paste.ts')
    const pasted = readPaste(text)
    let before = sheet.points
    const words = [...pasted.problems.slice(0, 3).map(({ message }) => message), pasted.more].filter(Boolean)
    if (pasted.problems.length > 3) words.push(say`${pasted.problems.length - 3} more lines were not taken.`)
    if (pasted.flowUnit && pasted.flowUnit !== units.flow) {
      words.push(
        say`The block says ${symbol(pasted.flowUnit)}, this test is in ${symbol(units.flow)}: switch the unit in the set-up.`,
      )
    }
    setTold(words.join(' '))
    if (pasted.rows.length === 0) return
    let placed = before
    write((points) => {
      // What was typed while the reader of pasted text was loaded is there.
      before = points
      placed = placePaste(points, row, column, pasted.rows)
      return placed
    })
    const count = pasted.rows.length
    offerUndo(count === 1 ? say`1 point pasted.` : say`${count} points pasted.`, () => {
      write((now) => takeBackPaste(now, before, placed))
      setTold('')
    })
  }

  const table = {
    sheet,
    units,
    brought,
    used,
    mean,
    found,
    unfinished,
    onPoints: write,
    onBaseline: editSheet,
    onDeleted: (row: number, gone: TypedPoint) =>
      offerUndo(say`Point ${row + 1} deleted.`, () => write((points) => insertPoint(points, row, gone))),
  }

  // Enough points for a regression, of which the procedure takes one: easily not noticed.
  const lone = used !== undefined && sheet.procedure === 'one-point' && brought.filter(Boolean).length >= 5

  const end = [
    sheet.reading !== 'fans' && device?.name,
    sheet.reading === 'device' ? say`at the device` : flowBasisWords[sheet.flowBasis],
  ]
    .filter(Boolean)
    .join(', ')

  return (
    <Section id="readings" title={say`Readings`} summary={readingsSummary(typed, mean)} end={end}>
      {sheet.subject === 'ducts' && <AreaCell />}
      {sheet.reading === 'fans' ? (
        <FansTable {...table} devices={devices} offerUndo={offerUndo} setTold={setTold} />
      ) : (
        <ReadingsTable
          {...table}
          ranges={[...new Set(device?.ranges.map(({ name }) => name).filter(Boolean))]}
          focused
          onPaste={(event, row, column) => void onPaste(event, row, column)}
        />
      )}
      {lone && (
        <p class="q small">
          {say`One-point: point ${used + 1} alone counts. For a line through all points, choose a procedure with 5+ points in the set-up.`}
        </p>
      )}
      {told && <Finding id="found-paste" text={told} />}
      {sheet.subject === 'enclosure' && <VolumeCell />}
    </Section>
  )
}

/** The one size of the building that most forms ask a figure of, a few keys away from the flow. */
function VolumeCell() {
  const { job, editBuilding } = useDeskContext()
  return (
    <SizeCell
      name="volume"
      label={say`Volume`}
      unit={volumeWords[job.units.length]}
      value={job.building.volume}
      problem={useFound()('building.volume')}
      onType={(volume) => editBuilding({ volume })}
    />
  )
}

/** The floor area that a system of ducts serves; while it is empty that of the building counts, and is shown. */
function AreaCell() {
  const { job } = useDeskContext()
  const { test, editSheet } = useBench()
  const found = useFound()
  const { servedArea = '' } = test.sheet
  const same = job.units.length === test.units.length
  return (
    <SizeCell
      name="area"
      label={say`Floor area served`}
      unit={areaWords[test.units.length]}
      hint={same ? job.building.floorArea : ''}
      value={servedArea}
      problem={found('servedArea') ?? (servedArea.trim() === '' ? found('building.floorArea') : undefined)}
      onType={(typed) => editSheet({ servedArea: typed })}
    />
  )
}

interface Size {
  name: string
  label: string
  unit: string
  hint?: string
  value: string
  problem: string | undefined
  onType: (text: string) => void
}

function SizeCell({ name, label, unit, hint = '', value, problem, onType }: Size) {
  return (
    <div class="vol">
      <label class="bl">
        {label}
        <input
          class="in"
          inputMode="decimal"
          autocomplete="off"
          maxLength={longest}
          placeholder={hint}
          data-size={name}
          value={value}
          {...(problem && { 'aria-invalid': true, 'aria-describedby': `found-${name}` })}
          onInput={(event) => onType(event.currentTarget.value)}
        />
        {unit}
      </label>
      {problem && <Finding id={`found-${name}`} text={problem} />}
    </div>
  )
}
