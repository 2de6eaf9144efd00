import { short } from '../say.ts'
import type { Check } from './check.ts'

/** ASTM E779 and ISO 9972 both accept 0.5 to 1.0 (from memory). */
export const exponent: Check = {
  id: 'exponent',
  name: 'Exponent',
  run: ({ leak, sheet: { procedure } }) => {
    if (!leak.line) return { outcome: 'not checked', text: 'One point gives no exponent: it is assumed.' }
    const found = short(leak.exponent, 3)
    const expected = '0.5 to 1.0'
    if (leak.exponent >= 0.5 && leak.exponent <= 1) {
      return { outcome: 'good', text: `The exponent of ${found} is physically possible.`, found, expected }
    }
    const rule = procedure === 'iso-9972' ? 'ISO 9972' : 'ASTM E779'
    const text = `The exponent is ${found}; ${rule} accepts 0.5 to 1.0. Look for a hose, a range or a window that changed during the test, and repeat it.`
    return { outcome: 'bad', text, found, expected }
  },
}
