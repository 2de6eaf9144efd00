/** Several duct systems of one dwelling: their rows and their sum. */
import { convert } from '../units/convert.ts'
import type { FigureValue, Report, Step } from './report.ts'
import { short } from './say.ts'
import { joined, joinedBySize, quadrature } from './budget.ts'
import { subjectOf } from './figures/index.ts'
import { say } from '../words/say.ts'

export interface SumOptions {
  /**
   * Floor area that the sum is set over, in ft2 with cfm per 100 ft2 as result, or in m2; `percent`: its ± at 95 %. Left
   * out: no such figure.
   */
  floorArea?: { value: number; unit: 'ft2' | 'm2'; percent?: number | undefined } | undefined
  /** As they stand in the rows and the working; left out: system 1, system 2, … */
  names?: readonly string[] | undefined
}

export interface SystemSum extends Pick<Report, 'figures' | 'working'> {
  /** Each system with its figures of the ducts. */
  rows: { name: string; figures: Report['figures'] }[]
}

const note = say`Sum of all systems. Limits: the sum of theirs, as if their errors were the same, since the instrument is.`
const flowId = 'duct-flow-25'
const shareId = 'duct-share-of-air-handler'
const areaId = 'duct-flow-25-per-floor-area'

const total = (numbers: readonly number[]): number => numbers.reduce((before, number) => before + number, 0)

function added(values: readonly FigureValue[], unit: string): FigureValue {
  const inUnit = (key: 'value' | 'low' | 'high') =>
    values.map((value) => convert(value[key] ?? Number.NaN, value.unit, unit))
  const bounded = values.every(({ low, high }) => low !== undefined && high !== undefined)
  return {
    value: total(inUnit('value')),
    unit,
    ...(bounded && { low: total(inUnit('low')), high: total(inUnit('high')) }),
    ...joined(values.map((value, index) => ({ ...value, value: inUnit('value')[index]! }))),
    note,
  }
}

function scaled(found: FigureValue, by: number, unit: string): FigureValue {
  const { value, low, high } = found
  return {
    ...found,
    value: value * by,
    unit,
    ...(low !== undefined && high !== undefined && { low: low * by, high: high * by }),
    note,
  }
}

/** The part of the size of the building is independent of the flow's: JCGM 100, 5.1.2. */
function sized(figure: FigureValue, percent = 0): FigureValue {
  const { value, low, high } = figure
  if (percent === 0 || low === undefined || high === undefined) return figure
  const half = (flow: number) => quadrature(flow, (value * percent) / 100)
  return {
    ...figure,
    ...joinedBySize(figure, percent),
    low: Math.max(0, value - half(value - low)),
    high: value + half(high - value),
    note: say`${note} The size of the building (± ${short(percent)} %) is added in quadrature.`,
  }
}

/**
 * The leakage of several duct systems as one: flows at 25 Pa are added, and set over the floor area that is given and over
 * the flow of all air handlers when every report knows its own. Source: common practice, no source.
 *
 * @param reports of duct tests, one for each system, of one kind (total or to outside)
 * @throws RangeError when there is no report, one is not of ducts, or the area is not above zero
 */
export function sumSystems(reports: readonly Pick<Report, 'figures'>[], options: SumOptions = {}): SystemSum {
  const flows = reports.map(({ figures }) => figures[flowId])
  if (flows.length === 0 || flows.some((flow) => !flow))
    throw new RangeError(say`Give a report of ducts for each system.`)
  const known = flows as FigureValue[]
  const { unit } = known[0]!
  const names = reports.map((_, index) => options.names?.[index] ?? say`system ${index + 1}`)
  const all = added(known, unit)
  const figures: Report['figures'] = { [flowId]: all }
  const working: Step[] = [
    {
      step: say`Duct leakage at 25 Pa, all systems`,
      formula: say`sum of the systems`,
      values: known
        .map((flow, index) => `“${names[index]}”: ${short(convert(flow.value, flow.unit, unit))}`)
        .join('; '),
      result: `${short(all.value)} ${unit}`,
      source: say`common practice, no source`,
      for: [flowId],
    },
  ]
  const { floorArea } = options
  if (floorArea) {
    if (!(floorArea.value >= 1e-6 && floorArea.value <= 1e12))
      throw new RangeError(say`The floor area must be a number above zero.`)
    const [flowUnit, perUnit, times] =
      floorArea.unit === 'ft2'
        ? (['cfm', 'cfm/100ft2', 100] as const)
        : unit === 'L/s'
          ? (['L/s', 'L/(s.m2)', 1] as const)
          : (['m3/h', 'm3/(h.m2)', 1] as const)
    const factor = (convert(1, unit, flowUnit) * times) / floorArea.value
    figures[areaId] = sized(scaled(all, factor, perUnit), floorArea.percent)
    working.push({
      step: say`Duct leakage at 25 Pa per floor area, all systems`,
      formula: `${times === 1 ? '' : `${times} × `}Q25 / A`,
      values: `Q25 = ${short(convert(all.value, unit, flowUnit))} ${flowUnit}, A = ${short(floorArea.value)} ${floorArea.unit}`,
      result: `${short(all.value * factor)} ${perUnit}`,
      source: say`IECC (from memory)`,
      for: [areaId],
    })
  }
  const shares = reports.map((report) => report.figures[shareId])
  if (shares.every((share) => share !== undefined && share.value > 0)) {
    // The flow of each air handler, from the share that its own report gives.
    const handlers = known.reduce(
      (sum, flow, index) => sum + (100 * convert(flow.value, flow.unit, unit)) / shares[index]!.value,
      0,
    )
    figures[shareId] = scaled(all, 100 / handlers, '%')
    working.push({
      step: say`Share of the flow of all air handlers`,
      formula: say`100 × Q25 / air handlers`,
      values: say`Q25 = ${short(all.value)} ${unit}, air handlers = ${short(handlers)} ${unit}`,
      result: `${short((100 * all.value) / handlers)} %`,
      source: say`common practice, no source`,
      for: [shareId],
    })
  }
  const rows = reports.map((report, index) => ({
    name: names[index]!,
    figures: Object.fromEntries(Object.entries(report.figures).filter(([id]) => subjectOf(id) === 'ducts')),
  }))
  return { rows, figures, working }
}
