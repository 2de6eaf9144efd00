/** What the work between a test before and a test after brought. */
import { convert } from '../units/convert.ts'
import type { FigureValue, Step } from './report.ts'
import { named, short } from './say.ts'
import { quadrature } from './budget.ts'
import { say } from '../words/say.ts'

export interface ReductionOptions {
  /**
   * 95 % half-width, as a fraction, that both tests owe to the same cause: the calibration of one flow device used for
   * both. It cancels in the percentage. Two devices: 0, the default.
   */
  shared?: number | undefined
}

export interface Reduction {
  /** Before less after, in the unit of the later test; negative when the leakage has grown. */
  absolute: FigureValue
  /** In percent of before. */
  percent: FigureValue
  working: Step[]
}

/** Of a size that can be compared and multiplied. */
const usable = (value: number): boolean => value >= 1e-12 && value <= 1e12

/** Half of the interval as a fraction of the value; nothing without an interval. */
function halfOf({ value, low, high }: FigureValue): number | undefined {
  return low === undefined || high === undefined ? undefined : (high - low) / 2 / value
}

/**
 * Reduction between two values of the same figure, absolute and in percent, with 95 % limits: JCGM 100, 5.1.2, for what is
 * independent, 5.2.2 for what both share.
 *
 * @param before a figure of the earlier test
 * @param after the same figure of the later test; its unit is that of the result
 * @throws RangeError when a value is not above zero, its limits lie the wrong way, the share is no fraction, or the units
 * measure different things
 * @example reduction({ value: 1500, unit: 'cfm' }, { value: 900, unit: 'cfm' }).percent.value // 40
 */
export function reduction(before: FigureValue, after: FigureValue, { shared = 0 }: ReductionOptions = {}): Reduction {
  const { unit, value: last } = after
  const was = convert(before.value, before.unit, unit)
  if (!usable(was) || !usable(last)) {
    throw new RangeError(say`A reduction needs two values above zero, and of a size that can be compared.`)
  }
  const [first, second] = [halfOf(before), halfOf(after)]
  if (![shared, first ?? 0, second ?? 0].every((half) => half >= 0 && half <= 1e12))
    throw new RangeError(say`The limits must enclose the value, and the share must be a fraction.`)
  const [absolute, percent] = [was - last, 100 * (1 - last / was)]
  const base: Step[] = [
    {
      step: say`Reduction`,
      formula: say`before − after`,
      values: named([say`before`, was, unit], [say`after`, last, unit]),
      result: `${short(absolute)} ${unit}`,
      source: say`common practice, no source`,
      for: ['reduction'],
    },
    {
      step: say`Reduction in percent`,
      formula: say`100 × (before − after) / before`,
      values: named([say`before`, was, unit], [say`after`, last, unit]),
      result: `${short(percent)} %`,
      source: say`common practice, no source`,
      for: ['reduction-percent'],
    },
  ]
  if (first === undefined || second === undefined) {
    return { absolute: { value: absolute, unit }, percent: { value: percent, unit: '%' }, working: base }
  }
  // What is shared can be no larger than the smaller of the two.
  const common = Math.min(shared, first, second)
  const own = [first, second].map((half) => Math.sqrt(half ** 2 - common ** 2)) as [number, number]
  const half = quadrature(was * own[0], last * own[1], common * absolute)
  const share = (100 * last * quadrature(...own)) / was
  const cause =
    common > 0
      ? say`Limits: ${short(100 * common, 3)} % of either is taken as the same in both tests, the rest as independent.`
      : say`Limits: both tests taken as independent.`
  const parts = named(['b', own[0]], ['a', own[1]], [say`shared`, common])
  return {
    absolute: { value: absolute, unit, low: absolute - half, high: absolute + half, note: cause },
    percent: { value: percent, unit: '%', low: percent - share, high: percent + share, note: cause },
    working: [
      ...base,
      {
        step: say`95 % half-width of the reduction`,
        formula: say`√((before × b)² + (after × a)² + (shared × (before − after))²)`,
        values: `${named([say`before`, was, unit], [say`after`, last, unit])}, ${parts}`,
        result: `${short(half)} ${unit}`,
        source: say`JCGM 100, 5.1.2 and 5.2.2`,
        for: ['reduction'],
      },
      {
        step: say`95 % half-width in percent`,
        formula: say`100 × after / before × √(b² + a²)`,
        values: `${named([say`before`, was, unit], [say`after`, last, unit])}, ${parts}`,
        result: `${short(share)} %`,
        source: 'JCGM 100, 5.1.2',
        for: ['reduction-percent'],
      },
    ],
  }
}
