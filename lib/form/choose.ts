/** Which option of a page stands for a value. */
import { sameness } from './same.ts'
import { plain, words } from './words.ts'

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

/** Options that answer nothing: the prompt of a list, and what stands beside its answers. */
const noAnswer = /^(|-+|none|other|n a|not applicable|unknown|(please )?(select|choose|pick)\b.*|all)$/

/** The options of a list or group that answer its question. */
export const answersIn = (options: readonly string[]): string[] => options.filter((each) => !noAnswer.test(plain(each)))

/** What each option says that not all of them say: `5A` of `Zone 5A`. */
export function apart(options: readonly string[]): string[] {
  const parts = options.map((option) =>
    option
      .trim()
      .split(/\s+/)
      .map((word) => ({ word, said: plain(word) })),
  )
  const said = parts.map((part) => new Set(part.map((each) => each.said)))
  const [first = new Set<string>()] = said
  const shared =
    options.length > 1 ? new Set([...first].filter((word) => said.every((each) => each.has(word)))) : undefined
  return parts.map((part, at) => {
    const own = part.flatMap((each) => (shared?.has(each.said) ? [] : [each.word]))
    return own.join(' ') || (options[at] ?? '')
  })
}

const inWords = (text: string): string => words(text).join(' ')

/**
 * The one option that stands for a text of which the list says more: `Zone 5` or `5, cool` for `5`, and the option of the
 * number for `5A` where no option has a letter. Nothing when none or several do.
 */
export function chooseAmong(text: string, options: readonly string[]): string | undefined {
  const chosen = choose(text, [], options)
  const wanted = inWords(text)
  if (chosen !== undefined || wanted === '') return chosen
  const real = answersIn(options)
  const said = apart(real).map(inWords)
  const number = /^(\d) [abc]$/.exec(wanted)?.[1]
  const tests: ((own: string) => boolean)[] = [
    (own) => own === wanted,
    (own) => /^\d/.test(wanted) && own.startsWith(`${wanted} `),
    (own) =>
      number !== undefined &&
      said.every((each) => !/^\d [abc]\b/.test(each)) &&
      (own === number || own.startsWith(`${number} `)),
  ]
  for (const test of tests) {
    const fits = real.filter((_, at) => test(said[at] ?? ''))
    if (fits.length === 1) return fits[0]
    if (fits.length > 1) return undefined
  }
  return undefined
}
