import { rules } from '../rules.ts'
import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/**
 * What ASTM E779, ASTM E1827 and ISO 9972 accept alike, from memory; ASTM E3158 a little below, 9.5.1, as a
 * published rule has it (California's reference appendix NA5.5).
 */
const least = 0.5
const leastOfLarge = 0.45
const high = 1

/** The rounding of a fit; a plain orifice has 0.5 exactly. */
const rounding = 1e-9

/** Source: what each procedure accepts, ASTM E779, ASTM E1827, ISO 9972 (from memory), ASTM E3158 (a reprint). */
export const exponent: Check = {
  id: 'exponent',
  name: say`Exponent`,
  run: ({ leak, sheet: { procedure } }) => {
    if (procedure === 'one-point') {
      return { outcome: 'not checked', text: say`One point gives no exponent: it is assumed.` }
    }
    const low = procedure === 'astm-e3158' ? leastOfLarge : least
    const found = short(leak.exponent, 3)
    const expected = say`${low.toFixed(low === least ? 1 : 2)} to ${high.toFixed(1)}`
    if (leak.exponent >= low - rounding && leak.exponent <= high + rounding) {
      return { outcome: 'good', text: say`The exponent of ${found} is physically possible.`, found, expected }
    }
    const text = say`The exponent is ${found}; ${rules[procedure]!} accepts ${expected}. Look for a hose, a range or a window that changed during the test, and repeat it.`
    return { outcome: 'bad', text, found, expected }
  },
}
