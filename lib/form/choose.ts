/** Which option of a page stands for a value. */
import { sameness } from './same.ts'
import { plain } from './words.ts'

/** Wordings of one answer that forms use side by side (common practice, no source). */
const sayings: readonly (readonly string[])[] = [
  ['yes', 'y', 'true', 'present'],
  ['no', 'n', 'false', 'none', 'not present'],
  ['pass', 'passed', 'passes', 'compliant', 'meets', 'met'],
  ['fail', 'failed', 'fails', 'not compliant', 'noncompliant', 'does not meet', 'not met'],
  ['depressurize', 'depressurise', 'depressurization', 'depressurisation', 'depressurized'],
  ['pressurize', 'pressurise', 'pressurization', 'pressurisation', 'pressurized'],
  ['outside', 'to outside', 'leakage to outside', 'leakage to outdoors', 'to outdoors'],
  ['total', 'total leakage'],
  ['light', 'mild', 'light wind', 'normal'],
  ['windy', 'strong wind', 'high wind'],
  ['calm', 'no wind', 'still'],
  ['final', 'post construction', 'postconstruction'],
  ['rough in', 'roughin'],
]

/**
 * The one option that equals the text, else equals another form of the value, else says the same in other words.
 * Nothing when none or several do.
 */
export function choose(text: string, others: readonly string[], options: readonly string[]): string | undefined {
  const wanted = [text, ...others]
  const plainly = wanted.map(plain)
  const tests: ((option: string) => boolean)[] = [
    (option) => option === text,
    (option) => {
      const said = plain(option)
      return wanted.some((each, at) => each !== '' && plainly[at] === said)
    },
    (option) => sameness(option, text) === 'same number',
    (option) => {
      const said = plain(option)
      return sayings.some((saying) => saying.includes(said) && plainly.some((each) => saying.includes(each)))
    },
  ]
  for (const test of tests) {
    const fits = options.filter(test)
    if (fits.length === 1) return fits[0]
    if (fits.length > 1) return undefined
  }
  return undefined
}
