/** A test in both directions: each is reduced alone, and this is the mean of the two. */
import { joined } from './budget.ts'
import { convert } from '../units/convert.ts'
import { balanced } from './figures/fan-required.ts'
import { oneWay } from './figures/fan-required-one-way.ts'
import { figures as registry } from './figures/index.ts'
import type { CheckResult, FigureValue, Report, Step } from './report.ts'
import { short } from './say.ts'
import { say } from '../words/say.ts'

/** Directions further apart than this share of their mean are asked about: common practice, no source. */
const mostApart = 0.25

/** A line through each direction is its own: its numbers have no mean. */
const ofOneDirection = new Set(['leakage-exponent', 'leakage-coefficient', 'correlation'])

/** A fan is what is left to add to the mean, not a mean of fans. */
const fans: Record<string, (total: number, credit: number) => number> = {
  'fan-required': balanced,
  'fan-required-one-way': oneWay,
}

const note = say`Mean of depressurizing and pressurizing. Limits: the mean of both, as if their errors were the same, since the instrument is.`

function inUnit(found: FigureValue, to: string): FigureValue {
  const { value, low, high, unit } = found
  const moved = (number: number) => convert(number, unit, to)
  return {
    ...found,
    value: moved(value),
    unit: to,
    ...(low !== undefined && high !== undefined && { low: moved(low), high: moved(high) }),
  }
}

const mean = (a: number, b: number): number => a / 2 + b / 2

/**
 * The mean of a figure over both directions. Its limits are the means of the limits: the propagation of JCGM 100, 5.2.2,
 * for errors that are wholly correlated, the most that they can be.
 *
 * @example meanOf({ value: 900, unit: 'cfm', low: 850, high: 950 }, { value: 1000, unit: 'cfm', low: 940, high: 1060 }).value // 950
 */
export function meanOf(one: FigureValue, second: FigureValue): FigureValue {
  const other = inUnit(second, one.unit)
  const limits =
    one.low !== undefined && one.high !== undefined && other.low !== undefined && other.high !== undefined
      ? { low: mean(one.low, other.low), high: mean(one.high, other.high) }
      : {}
  return { value: mean(one.value, other.value), unit: one.unit, ...limits, ...joined([one, other]), note }
}

/** The fan for the mean of the infiltration credit. */
function fanOf(fan: (total: number, credit: number) => number, figures: Report['figures']): FigureValue {
  const { value: total, unit } = figures['ventilation-required']!
  const { value, low = value, high = value } = figures['infiltration-credit']!
  const left = (credit: number) => Math.max(0, fan(total, credit))
  return { value: left(value), unit, low: left(high), high: left(low), note: say`From the mean of both directions.` }
}

function agreement(one: Report, other: Report): CheckResult[] {
  const id = ['duct-flow-25', 'flow-50'].find((key) => one.figures[key] && other.figures[key])
  if (id === undefined) return []
  const first = one.figures[id]!
  const second = inUnit(other.figures[id]!, first.unit)
  const apart = Math.abs(first.value - second.value) / (first.value / 2 + second.value / 2)
  const found = say`${short(first.value, 4)} and ${short(second.value, 4)} ${first.unit}, ${short(100 * apart, 2)} % apart`
  const expected = say`up to ${100 * mostApart} % apart`
  if (apart <= mostApart)
    return [{ id: 'directions', outcome: 'good', text: say`Both directions agree.`, found, expected }]
  const text = say`The directions are ${short(100 * apart, 2)} % apart. Look for a flap, damper or seal that opens one way, and for a slip in the readings; report both.`
  return [{ id: 'directions', outcome: 'doubtful', text, found, expected }]
}

/**
 * A test in both directions as one: the mean of every figure that both reports have, but for those of a single line.
 * Source: ASTM E779, ISO 9972 and the protocols for large buildings report each direction and the mean (from memory).
 *
 * @param depressurize report of the test in that direction
 * @param pressurize report of the other; its units may differ
 * @returns figures with their means, a check of how far the directions lie apart, and the working of the means
 */
export function combine(depressurize: Report, pressurize: Report): Pick<Report, 'figures' | 'checks' | 'working'> {
  const figures: Report['figures'] = {}
  const working: Step[] = []
  for (const { id, name, rests } of registry) {
    const [one, other] = [depressurize.figures[id], pressurize.figures[id]]
    if (!one || !other || ofOneDirection.has(id)) continue
    if (rests === 'on no reading') {
      figures[id] = one
      continue
    }
    const fan = fans[id]
    const both = fan ? fanOf(fan, figures) : meanOf(one, other)
    figures[id] = both
    if (fan) continue
    const second = inUnit(other, one.unit)
    working.push({
      step: say`${name.charAt(0).toUpperCase() + name.slice(1)}, mean of both directions`,
      formula: say`(depressurizing + pressurizing) / 2`,
      values: say`depressurizing = ${short(one.value)} ${one.unit}, pressurizing = ${short(second.value)} ${one.unit}`,
      result: `${short(both.value)}${one.unit === '1' ? '' : ` ${one.unit}`}`,
      source: say`ASTM E779, ISO 9972 (from memory)`,
      for: [id],
    })
  }
  return { figures, checks: agreement(depressurize, pressurize), working }
}
