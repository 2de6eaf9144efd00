import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** Source: 0.98: ISO 9972 (from memory), for other procedures common practice, no source. */
export const correlation: Check = {
  id: 'correlation',
  name: say`Correlation`,
  run: ({ leak: { line }, sheet: { procedure } }) => {
    if (!line) return undefined
    // What rounds to one is not one: the digits say how near.
    const found = line.correlation > 0.99995 ? line.correlation.toFixed(4) : short(line.correlation, 4)
    const expected = say`r² of 0.98 or more`
    if (line.correlation >= 0.98)
      return { outcome: 'good', text: say`The points lie well on a line: r² ${found}.`, found, expected }
    const text = say`The points scatter: r² is ${found}. Average each reading for longer, or test in calmer weather.`
    return { outcome: procedure === 'iso-9972' ? 'bad' : 'doubtful', text, found, expected }
  },
}
