/** Comparing the texts of a page: labels, legends, options. */
import { cut } from '../bounds.ts'

/** The text with each run of white space as one blank, and none around it. */
export const squeeze = (text: string): string => text.replace(/\s+/g, ' ').trim()

/** Collapses white space and drops the marks that pages hang on a label: a trailing colon, a star for "required". */
export function tidy(text: string): string {
  const whole = squeeze(text)
  // Step by step: an expression for the end would be tried anew at every mark in the middle.
  let [from, to] = [0, whole.length]
  while (from < to && '* '.includes(whole.charAt(from))) from++
  while (to > from && '*: '.includes(whole.charAt(to - 1))) to--
  return whole.slice(from, to).replace(/ ?\((required|optional)\)$/i, '')
}

/** Lower case, without numbering in front (`C1.`, `7)`) and without punctuation, so that small edits do not count. */
export function plain(text: string): string {
  return tidy(text)
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/^[a-z]?\d{0,2}[.)]\s+/, '')
    .replace(/[^\p{L}\p{N}%.]+/gu, ' ')
    .replace(/\.(?!\d)/g, '')
    .trim()
}

/** The words of a text, a number and the letters beside it apart: `CFM50` gives `cfm`, `50`. */
export function words(text: string): string[] {
  return plain(text).match(/\d+(?:\.\d+)?|%|\p{L}+/gu) ?? []
}

/** How alike two texts are, 0 to 1. Equal to the letter 1; equal but for case, marks or numbering 0.9. */
export function alike(a: string, b: string): number {
  if (a === b) return 1
  const one = words(a)
  const other = words(b)
  if (one.length === 0 || other.length === 0) return 0
  if (one.join(' ') === other.join(' ')) return 0.9
  const shared = one.length - without(one, other).length
  return (0.85 * 2 * shared) / (one.length + other.length)
}

/** Words of which a form has both, side by side: a control with one of them is never the control with the other. */
const opposites: readonly (readonly [RegExp, RegExp])[] = [
  [/\b(before|pre|existing|initial)\b|\btest in\b/, /\b(after|post|final|improved)\b|\btest out\b/],
  [/\b(indoors?|inside|interior)\b/, /\b(outdoors?|outside|exterior)\b/],
  [/\btotal\b/, /\b(outside|outdoors)\b/],
  [/\bdepressuri[sz]\w*/, /\bpressuri[sz]\w*/],
  [/\b(min|minimum|lowest)\b/, /\b(max|maximum|highest)\b/],
  [/\bsupply\b/, /\breturn\b/],
  [/\b(volume|cu|cubic)\b/, /\b(area|sq|square)\b/],
]

/** The numbers in a text, without the exponents of units. */
function numbers(text: string): string[] {
  return text.replace(/\b(ft|in|cm|m) ?[23]\b/g, '$1').match(/\d+(?:\.\d+)?/g) ?? []
}

interface Traits {
  text: string
  numbers: readonly string[]
  /** Two bits for each pair of opposites: which of the two the text has. */
  sides: readonly number[]
}

const traits = new Map<string, Traits>()

function traitsOf(long: string): Traits {
  const text = cut(long)
  const before = traits.get(text)
  if (before) return before
  const simple = plain(text)
  const found = {
    text: simple,
    numbers: numbers(simple),
    sides: opposites.map(([left, right]) => (left.test(simple) ? 1 : 0) + (right.test(simple) ? 2 : 0)),
  }
  if (traits.size > 20_000) traits.clear()
  traits.set(text, found)
  return found
}

/** Whether two texts speak of different things: opposite words, or each a number that the other lacks. */
export function contradict(a: string, b: string): boolean {
  if (a === b) return false
  const one = traitsOf(a)
  const other = traitsOf(b)
  if (one.text === other.text) return false
  if (one.sides.some((side, at) => side + (other.sides[at] ?? 0) === 3 && side !== 0 && side !== 3)) return true
  return (
    one.numbers.some((each) => !other.numbers.includes(each)) &&
    other.numbers.some((each) => !one.numbers.includes(each))
  )
}

/** Notations of one thing, which a form may exchange for each other from one year to the next. */
const notations: readonly (readonly [RegExp, string])[] = [
  [/#/g, ' number '],
  [/\b(cubic (feet|foot)|cu\.? ?ft\.?|ft ?[3³]) ?(per|\/|a) ?min(ute)?s?\b/g, ' cfm '],
  [/\bair ?changes?( ?(per|\/|an|each) ?h(ou)?r?)?\b/g, ' ach '],
  [/(\d) ?pa(scals?)?\b/g, '$1 '],
  [/\b(cubic (feet|foot)|cu\.? ?ft)\b/g, ' ft3 '],
  [/\b(square (feet|foot)|sq\.? ?ft)\b/g, ' ft2 '],
  [/\be-mail\b/g, ' email '],
  [/\b(post(al)? ?code|zip ?code)\b/g, ' zip '],
]
/** Phrases that a form puts around a label without changing what it asks for. */
const around: readonly RegExp[] = [
  /^(please )?(enter|select|choose|give|provide|specify|fill in|type) /,
  /^(the|your|a|an) /,
  /^[a-z]?\d{0,2}[.)] +/,
  / (of|for|in) (this|the) (building|house|home|dwelling|property|project|application)$/,
  / (required|optional|mandatory)$/,
]
const sameWords: Readonly<Record<string, string>> = {
  no: 'number',
  num: 'number',
  zipcode: 'zip',
  licence: 'license',
  tel: 'phone',
}
const units = /* @__PURE__ */ new Set(
  '2 3 50 25 ft ft2 ft3 cfm cf sf ach in cm m l s h pa f c deg per feet square cubic %'.split(' '),
)
const small = new Set('of the a an in for is and or to at on by it this your'.split(' '))

const meant = (part: string): string[] =>
  words(part).flatMap((word) => (small.has(word) ? [] : [sameWords[word] ?? word]))

/** Words that forms use for each other (common practice, no source). */
const meanings: readonly string[] = [
  'house home dwelling residence building property site',
  'number ref reference',
  'tester technician rater inspector',
  'company firm business organization organisation',
  'license certification certificate credential',
  'phone telephone mobile',
  'town city municipality',
  'test testing tested tests',
  'contractor builder',
  'ducts duct',
  'notes comments comment remarks note',
  'result outcome',
  'leakage leak',
]
const meaningOf = /* @__PURE__ */ new Map(
  /* @__PURE__ */ meanings.flatMap((line) => {
    const [first = '', ...rest] = line.split(' ')
    return rest.map((word) => [word, first] as const)
  }),
)

const others = new Map<string, string>()

/** The text with the word that stands for all that mean the same. */
function inCommonWords(long: string): string {
  const text = cut(long)
  const before = others.get(text)
  if (before !== undefined) return before
  const said = tidy(text)
    .toLowerCase()
    .replaceAll(/\p{L}+/gu, (word) => {
      const same = sameWords[word] ?? word
      return meaningOf.get(same) ?? same
    })
  if (others.size > 20_000) others.clear()
  others.set(text, squeeze(said))
  return squeeze(said)
}

/** How alike two labels are in what they ask for when words that forms use for each other count as the same. */
export const meansAlike = (a: string, b: string): number => asksAlike(inCommonWords(a), inCommonWords(b))

export interface Gist {
  /** The words that say what is asked for, without what stands in brackets or after a comma. */
  core: readonly string[]
  /** The words in brackets or after a comma: a unit, a hint. */
  aside: readonly string[]
  /** All of these. */
  all: ReadonlySet<string>
}

const known = new Map<string, Gist>()

/** What a label asks for, without the phrases around it; remembered, because a page is compared again and again. */
export function gist(long: string): Gist {
  const text = cut(long)
  const before = known.get(text)
  if (before) return before
  let lower = tidy(text).toLowerCase()
  for (const [notation, by] of notations) lower = lower.replace(notation, by)
  for (let last = ''; last !== lower;) {
    last = lower
    for (const phrase of around) lower = lower.replace(phrase, '').trim()
    lower = tidy(lower)
  }
  const inside = [...lower.matchAll(/\(([^)]*)\)|,(.*)$/g)].map((match) => match[1] ?? match[2] ?? '').join(' ')
  const core = meant(lower.replaceAll(/\([^)]*\)|,.*$/g, ' '))
  const said = core.length > 0 ? { core, aside: meant(inside) } : { core: meant(lower), aside: [] }
  const found = { ...said, all: new Set([...said.core, ...said.aside]) }
  if (known.size > 20_000) known.clear()
  known.set(text, found)
  return found
}

function without(all: readonly string[], taken: readonly string[]): string[] {
  const left = new Map<string, number>()
  for (const word of taken) left.set(word, (left.get(word) ?? 0) + 1)
  return all.filter((word) => {
    const more = left.get(word) ?? 0
    left.set(word, more - 1)
    return more <= 0
  })
}

/**
 * How alike two labels are in what they ask for, 0 to 1. One that has a word more that is not in brackets and not mere
 * politeness (`Mailing address` beside `Address`) asks for something else: at most 0.5.
 */
export function asksAlike(a: string, b: string): number {
  if (a === b) return 1
  const one = gist(a)
  const other = gist(b)
  if (one.core.length === 0 || other.core.length === 0) return 0
  // Most labels of a page have no word in common.
  if (!one.core.some((word) => other.all.has(word)) && !other.core.some((word) => one.all.has(word))) return 0
  const missing = without(one.core, [...other.core, ...other.aside])
  const more = without(other.core, [...one.core, ...one.aside])
  const left = without(one.aside, [...other.core, ...other.aside])
  const right = without(other.aside, [...one.core, ...one.aside])
  if (missing.length === 0 && more.length === 0) {
    if (left.length + right.length === 0) return 0.95
    // “Date (test)” is not “Date (permit)”, and a volume in other units is not the same entry.
    if (left.length > 0 && right.length > 0) return 0.8
    return [...left, ...right].every((word) => units.has(word)) ? 0.9 : 0.88
  }
  const shared = one.core.length - missing.length
  const share = (2 * shared) / (one.core.length + other.core.length)
  return missing.length === 0 || more.length === 0 ? Math.min(0.5, 0.6 * share) : 0.7 * share
}

/** Whether the second label says all that the first says and a word more: `Previous owner` after `Owner`. */
export function saysMore(a: string, b: string): boolean {
  const one = gist(a)
  const other = gist(b)
  return (
    one.core.length > 0 &&
    one.core.every((word) => other.all.has(word)) &&
    without(one.core, [...other.core, ...other.aside]).length === 0 &&
    without(other.core, [...one.core, ...one.aside]).length > 0
  )
}

/** Whether one label says all that the other says and a word more, whichever of the two. */
export function narrower(a: string, b: string): boolean {
  return saysMore(a, b) || saysMore(b, a)
}
