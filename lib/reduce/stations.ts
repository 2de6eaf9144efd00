/** Readings taken at the same pressure, averaged. */
import type { Reading } from './flow.ts'

/**
 * Readings this close to the one that is nearest to the pressure asked for, Pa, are repeats of it and are averaged:
 * common practice, no source.
 */
export const repeatsWithin = 3

/** Less than any gauge shows: the baseline taken off a reading leaves a rounding that must decide nothing. Pa. */
const noise = 1e-9

export interface Station {
  /** Which readings of the sheet are averaged, in their order. */
  from: number[]
  /** Means of the pressures (Pa) and of the flows as read. */
  pressure: number
  asRead: number
}

/**
 * The station at a pressure: the reading nearest to it (of two as near the one at the higher pressure) and every other
 * within {@link repeatsWithin} of that one. Source: ASTM E1827, averages of repeated readings (from memory).
 *
 * @param readings baseline-corrected
 * @param target Pa
 * @param taken indices of readings that belong to another station
 * @returns nothing when every reading is taken
 * @example stationAt([{ pressure: 51, asRead: 10 }, { pressure: 49, asRead: 12 }, { pressure: 26, asRead: 6 }], 50) // { from: [0, 1], pressure: 50, asRead: 11 }
 */
export function stationAt(
  readings: readonly Pick<Reading, 'pressure' | 'asRead'>[],
  target: number,
  taken: readonly number[] = [],
): Station | undefined {
  let nearest: number | undefined
  let least = Infinity
  for (const [index, { pressure }] of readings.entries()) {
    const away = Math.abs(pressure - target)
    if (taken.includes(index) || away > least + noise || (away > least - noise && pressure <= nearest!)) continue
    least = away
    nearest = pressure
  }
  if (nearest === undefined) return undefined
  const from = [...readings.keys()].filter(
    (index) => !taken.includes(index) && Math.abs(readings[index]!.pressure - nearest) <= repeatsWithin + noise,
  )
  const mean = (key: 'pressure' | 'asRead') => from.reduce((sum, index) => sum + readings[index]![key], 0) / from.length
  return { from, pressure: mean('pressure'), asRead: mean('asRead') }
}

/** How repeated readings scatter, once the slope of the leaks is known. */
export interface Scatter {
  /** Largest less smallest flow, brought to one pressure, as a fraction of their mean. */
  spread: number
  /** Standard uncertainty of the mean flow as a fraction, and its degrees of freedom. */
  mean: number
  freedom: number
}

/**
 * Scatter of the repeats of a station: JCGM 100, 4.2, of the flows brought to the station's pressure with the exponent.
 *
 * @param exponent of the leaks
 * @returns nothing when there is one reading only
 */
export function scatterOf(
  { from, pressure, asRead }: Station,
  readings: readonly Pick<Reading, 'pressure' | 'asRead'>[],
  exponent: number,
): Scatter | undefined {
  const freedom = from.length - 1
  if (freedom === 0) return undefined
  const brought = from.map((index) => {
    const reading = readings[index]!
    return (reading.asRead * (pressure / reading.pressure) ** exponent) / asRead
  })
  const mean = brought.reduce((sum, value) => sum + value, 0) / from.length
  const squares = brought.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  const ends = brought.toSorted((a, b) => a - b)
  return { spread: (ends.at(-1)! - ends[0]!) / mean, mean: Math.sqrt(squares / freedom / from.length) / mean, freedom }
}
