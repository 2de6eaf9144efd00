/** Which option of a page stands for a value. */
import { sameness } from './same.ts'
import { plain } from './words.ts'

/** Wordings of one answer that forms use side by side, in each language that proposals know (common practice, no source). */
const sayings: readonly (readonly string[])[] = [
  ['yes', 'y', 'true', 'present', 'si', 'oui', 'ja'],
  ['no', 'n', 'false', 'none', 'not present', 'non', 'nein'],
  ['pass', 'passed', 'passes', 'compliant', 'meets', 'met', 'cumple', 'conforme', 'bestanden', 'erfullt'],
  [
    'fail',
    'failed',
    'fails',
    'not compliant',
    'noncompliant',
    'does not meet',
    'not met',
    'no cumple',
    'non conforme',
    'nicht bestanden',
    'nicht erfullt',
  ],
  [
    'depressurize',
    'depressurise',
    'depressurization',
    'depressurisation',
    'depressurized',
    'despresurizacion',
    'depression',
    'unterdruck',
  ],
  [
    'pressurize',
    'pressurise',
    'pressurization',
    'pressurisation',
    'pressurized',
    'presurizacion',
    'surpression',
    'uberdruck',
  ],
  [
    'outside',
    'to outside',
    'leakage to outside',
    'leakage to outdoors',
    'to outdoors',
    'al exterior',
    'vers l exterieur',
    'nach außen',
  ],
  ['total', 'total leakage', 'totale', 'gesamt'],
  ['light', 'mild', 'light wind', 'normal'],
  ['windy', 'strong wind', 'high wind'],
  ['calm', 'no wind', 'still'],
  ['final', 'post construction', 'postconstruction', 'abnahme'],
  ['rough in', 'roughin', 'gros œuvre', 'rohbau'],
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
