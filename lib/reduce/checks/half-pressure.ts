import { short } from '../say.ts'
import type { Check, CheckContext } from './check.ts'
import { say } from '../../words/say.ts'

/** The exponent between the two readings furthest apart; nothing when they lie too near each other. */
function exponentBetween({ readings: { readings }, leak }: CheckContext): number | undefined {
  if (!leak.assumed) return leak.exponent
  const sorted = readings.toSorted((a, b) => a.pressure - b.pressure)
  const [low, high] = [sorted[0]!, sorted.at(-1)!]
  if (high.pressure < 1.5 * low.pressure) return undefined
  return Math.log(high.asRead / low.asRead) / Math.log(high.pressure / low.pressure)
}

/**
 * Flow at half the pressure over the flow. Source: 0.5^n, the band is physics; about 0.6: common practice, no source.
 */
export const halfPressure: Check = {
  id: 'half-pressure',
  name: say`Half the pressure`,
  run: (context) => {
    const n = exponentBetween(context)
    if (n === undefined) {
      const text = say`Take a second reading at half the pressure: the flow should fall to about 0.6 of the first.`
      return { outcome: 'not checked', text }
    }
    const ratio = 0.5 ** n
    const found = short(ratio, 3)
    const expected = say`0.50 to 0.71, usually near 0.6`
    // A perfect orifice and a perfect crack are good but for the rounding of a fit.
    if (ratio >= 0.5 - 1e-9 && ratio <= Math.SQRT1_2 + 1e-9) {
      return { outcome: 'good', text: say`At half the pressure the flow falls to ${found} of itself.`, found, expected }
    }
    const text = say`At half the pressure the flow falls to ${found} of itself; no opening does that. Check hoses, range and readings.`
    return { outcome: ratio < 0.48 || ratio > 0.73 ? 'bad' : 'doubtful', text, found, expected }
  },
}
