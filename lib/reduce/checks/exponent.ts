import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** What each procedure accepts, from memory. */
const bands = {
  'two-point': { rule: 'ASTM E1827', low: 0.5, high: 1 },
  'astm-e779': { rule: 'ASTM E779', low: 0.5, high: 1 },
  'iso-9972': { rule: 'ISO 9972', low: 0.5, high: 1 },
}

/** The rounding of a fit; a plain orifice has 0.5 exactly. */
const rounding = 1e-9

/** Source: what each procedure accepts, ASTM E779, ASTM E1827, ISO 9972 (from memory). */
export const exponent: Check = {
  id: 'exponent',
  name: say`Exponent`,
  run: ({ leak, sheet: { procedure } }) => {
    if (procedure === 'one-point') {
      return { outcome: 'not checked', text: say`One point gives no exponent: it is assumed.` }
    }
    const { rule, low, high } = bands[procedure]
    const found = short(leak.exponent, 3)
    const expected = say`${low.toFixed(1)} to ${high.toFixed(1)}`
    if (leak.exponent >= low - rounding && leak.exponent <= high + rounding) {
      return { outcome: 'good', text: say`The exponent of ${found} is physically possible.`, found, expected }
    }
    const text = say`The exponent is ${found}; ${rule} accepts ${expected}. Look for a hose, a range or a window that changed during the test, and repeat it.`
    return { outcome: 'bad', text, found, expected }
  },
}
