import { useState } from 'preact/hooks'
import { reasonOf } from '../../job/left-out.ts'
import { reduceTest } from '../../job/reduce.ts'
import type { Device, Job, Test } from '../../job/schema.ts'
import { judge } from '../../job/house-limit.ts'
import { curveOf } from '../../reduce/curve.ts'
import { decimalsOf, usualFlow } from '../../reduce/figures/index.ts'
import { symbol } from '../../units/symbol.ts'
import { language, say } from '../../words/say.ts'
import { halfUp } from '../../results/lines.ts'
import { Icon } from '../parts/icons.tsx'
import { asRead, wordsInLocale } from '../../results/in-locale.ts'
import { PlotDrawing } from '../plot/plot-drawing.tsx'
import { plotOf, type Mark, type Plot } from '../../results/plot/plot.ts'
import { PointTargets } from '../plot/point-targets.tsx'
import { ResidualDrawing } from '../plot/residual-drawing.tsx'
import { residualsOf, type Residuals } from '../../results/plot/residuals.ts'
import { ZeroFlowDrawing } from '../plot/zero-flow-drawing.tsx'
import { zeroFlowOf, type ZeroFlow } from '../../results/plot/zero-flow.ts'
import '../plot/plot.css'
import { setPoint } from '../../job/edits.ts'
import { Field } from './field.tsx'
import { Section } from './section.tsx'
import { useBench, useDeskContext } from './use-context.ts'
import { useRested } from './use-rested.ts'

interface Drawn {
  plot: Plot | undefined
  residuals: Residuals | undefined
  zero: ZeroFlow | undefined
}

function draw(job: Job, test: Test, devices: readonly Device[]): Drawn {
  const {
    sheet,
    report,
    points = [],
    apart,
  } = reduceTest({ units: job.units, building: job.building }, test, [...devices])
  const none = { plot: undefined, residuals: undefined, zero: undefined }
  if (!sheet || !report?.fit) return none
  const options = { onePointFactor: test.onePointFactor }
  const curve = curveOf(
    sheet,
    options,
    apart.map(({ point }) => point),
  )
  const { limit } = judge(job, test, report.figures)
  const rows = { points: points.map(({ row }) => row), apart: apart.map(({ row }) => row) }
  const plot = plotOf(sheet, report, curve, limit, rows)
  const residuals = plot && residualsOf(plot.marks)
  return wordsInLocale({ plot, residuals, zero: zeroFlowOf(sheet) }, language())
}

/** `Point 3: 25.8 Pa, 493 cfm, 0.9 % above the line` */
function words({ row, pressure, flow, off, left }: Mark, test: Test): string {
  const decimals = decimalsOf(usualFlow(test.sheet.subject), test.units.flow)
  const at = say`Point ${row + 1}: ${halfUp(pressure, 1)} Pa, ${halfUp(flow, decimals)} ${symbol(test.units.flow)}`
  const away = halfUp(Math.abs(off), 1)
  const side = off < 0 ? say`${at}, ${away} % below the line` : say`${at}, ${away} % above the line`
  return asRead(left ? say`${side}, left out` : side)
}

/** Flow against pressure, what lies off the line, and the baseline; a point can be left out there, with a reason. */
export function PlotSection() {
  const { job, devices } = useDeskContext()
  const { test } = useBench()
  const drawn = useRested(test.id, () => draw(job, test, devices), [job, test, devices])
  const [chosen, setChosen] = useState<number>()
  const [pointed, setPointed] = useState<number>()

  if (!drawn?.plot) return null
  const { plot, residuals, zero } = drawn
  const gone = test.sheet.points.filter((point) => reasonOf(point) !== '').length
  const looked = plot.marks.find(({ row }) => row === (pointed ?? chosen))
  const named = (mark: Mark) => words(mark, test)
  const step = (by: number) => {
    const at = plot.marks.findIndex(({ row }) => row === chosen)
    const next = at < 0 ? (by > 0 ? 0 : plot.marks.length - 1) : (at + by + plot.marks.length) % plot.marks.length
    setChosen(plot.marks[next]?.row)
  }
  return (
    <Section
      id="plot"
      title={say`Plot`}
      summary={say`flow against pressure, r² ${plot.equation.correlation}`}
      end={gone > 0 && say`${gone} left out`}
    >
      <PlotDrawing plot={plot}>
        <PointTargets marks={plot.marks} named={named} chosen={chosen} onChoose={setChosen} onPoint={setPointed} />
      </PlotDrawing>
      {residuals && <ResidualDrawing residuals={residuals} chosen={pointed ?? chosen} />}
      {zero && <ZeroFlowDrawing zero={zero} />}
      <div class="point-bar">
        <button type="button" class="ib" aria-label={say`Previous point`} onClick={() => step(-1)}>
          <Icon name="tw" class="tw back" />
        </button>
        <p role="status">
          {looked ? named(looked) : say`Choose a point to see its values, or to leave it out of the figures.`}
        </p>
        <button type="button" class="ib" aria-label={say`Next point`} onClick={() => step(1)}>
          <Icon name="tw" />
        </button>
      </div>
      {chosen !== undefined && (
        <LeaveOut key={chosen} row={chosen} last={plot.marks.filter(({ left }) => !left).length <= 3} />
      )}
    </Section>
  )
}

/** Takes a point out of the reduction, with the reason that the report will name, or back in. */
function LeaveOut({ row, last }: { row: number; last: boolean }) {
  const { offerUndo } = useDeskContext()
  const { test, editSheet } = useBench()
  const [typed, setTyped] = useState('')
  const point = test.sheet.points[row]
  if (!point) return null
  const reason = reasonOf(point)
  const write = (leftOut: string) => editSheet((now) => ({ points: setPoint(now.points, row, { leftOut }) }))
  if (reason !== '') {
    return (
      <p class="left-out">
        {say`Point ${row + 1} is left out: ${reason}`}{' '}
        <button type="button" class="link" onClick={() => write('')}>
          {say`Take it back`}
        </button>
      </p>
    )
  }
  if (last) return <p class="q left-out">{say`A line needs three points: none can be left out.`}</p>
  return (
    <form
      class="left-out"
      onSubmit={(event) => {
        event.preventDefault()
        if (typed.trim() === '') return
        write(typed.trim())
        setTyped('')
        offerUndo(say`Point ${row + 1} is left out of the figures.`, () => write(''))
      }}
    >
      <Field label={say`Why point ${row + 1} is left out, for the report`} wide value={typed} onInput={setTyped} />
      <button type="submit" class="b low" disabled={typed.trim() === ''}>
        {say`Leave point ${row + 1} out`}
      </button>
    </form>
  )
}
