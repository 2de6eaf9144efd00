/** Which figure or field a control likely asks for, with the reason in words. Plain data in and out: it knows no page. */
import { cut } from '../../bounds.ts'
import { choose, chooseAmong } from '../choose.ts'
import { dateKinds, lineKinds, numberKinds, optionKinds, proseKinds, tickKinds } from '../kind-traits.ts'
import type { Item, Material } from '../material.ts'
import type { Clues } from '../schema.ts'
import type { Suggestion } from './suggestion.ts'
import { unitIn, unitsAgree } from './unit-in.ts'
import { vocabulary } from './vocabulary.ts'
import { french } from './vocabulary-french.ts'
import { german } from './vocabulary-german.ts'
import { spanish } from './vocabulary-spanish.ts'
import { alike, contradict, plain, words } from '../words.ts'
import { ofSomeoneElse, ofTester, optionsAnswer, subjectsOf, type Subjects } from './evidence.ts'
import { roleWords } from '../../words/names.ts'
import { say } from '../../words/say.ts'

interface Asked {
  label: string
  /** The heading, in words. */
  under: string
  subjects: Subjects
  /** Label and section, as the page shows them. */
  context: string
  section: string
  attributes: string
  autocomplete: string
  unit: string | undefined
  clues: Clues
}

/** `vor Ort` is on site, `nach außen` outwards, `nach ISO 9972` and `d’après` by a standard or a plan: no time. */
const works = '(den arbeiten|(der |einer )?(sanierung|abdichtung|modernisierung))'
const before = new RegExp(`\\b(before|pre|existing|initial|test in|antes|previa|avant|vorher|vor ${works})\\b`)
const after = new RegExp(
  `\\b(after|post|final|improved|test out|despues|posterior|(?<!\\bd )apres|nachher|nach ${works})\\b`,
)
const ducts = /\b(ducts?|ductos?|conductos?|conduits|gaines|luftleitung\w*|leitungsnetz\w*)\b/
/** Forms are not always in the browser's language, so each is looked for. */
const otherLanguages = [spanish, french, german]

/** What asks for something says so in so many characters; a vocabulary is held against it, at worst word by word. */
const most = 200

function asked(whole: Clues, subjects: Subjects): Asked {
  const clues = {
    ...whole,
    name: cut(whole.name, most),
    section: cut(whole.section, most),
    placeholder: cut(whole.placeholder, most),
    attributes: Object.fromEntries(
      Object.entries(whole.attributes)
        .slice(0, 12)
        .map(([name, value]) => [name, cut(value, most)]),
    ),
  }
  const { autocomplete = '', ...others } = clues.attributes
  // Field names run words together: testDate, test_date, test-date.
  const attributes = Object.values(others).map((value) =>
    words(value.replace(/([a-z])([A-Z])/g, '$1 $2').replace(/_/g, ' ')).join(' '),
  )
  return {
    label: words(clues.name || clues.placeholder).join(' '),
    under: words(clues.section).join(' '),
    subjects,
    context: `${clues.section} ${clues.name}`,
    section: clues.section,
    attributes: attributes.join(' | '),
    autocomplete: autocomplete.split(/\s+/).at(-1) ?? '',
    unit: unitIn(clues.name) ?? unitIn(clues.placeholder),
    clues,
  }
}

type Worded = [score: number, reason: string]

/** How far the label, or failing that the field's own name or the answers it offers, asks for the item. */
function wording(id: string, item: Item, ask: Asked): Worded {
  const { label, attributes, autocomplete, under, clues } = ask
  if (ofSomeoneElse(id, label, under)) return [0, '']
  const field = id.slice(id.lastIndexOf('/') + 1)
  const known = Object.hasOwn(vocabulary, field) ? vocabulary[field] : undefined
  if (otherLanguages.some((wordings) => Object.hasOwn(wordings, field) && wordings[field]?.test(label)))
    return [1, say`label`]
  const never = known?.never?.test(label) ?? false
  const answers = !never && optionsAnswer(id, item, clues.options)
  if (known && !never) {
    if (known.says.test(label)) return [1, say`label`]
    if (known.autocomplete !== undefined && known.autocomplete === autocomplete) return [0.95, 'autocomplete']
    if (known.hints?.test(label) && ((id.startsWith('tester/') && ofTester(under)) || answers))
      return [0.9, answers ? say`label` : say`legend`]
    if (answers && certain.has(field)) return [0.85, say`options`]
    if (known.says.test(attributes) && !known.never?.test(attributes)) return [label ? 0.7 : 0.85, say`field name`]
    if (known.hints?.test(label)) return [0.6, say`label in part`]
  }
  const likeness = alike(item.label, label)
  return never && likeness < 0.8 ? [0, ''] : [likeness * 0.9, likeness >= 0.8 ? say`label` : say`label in part`]
}

/** Fields whose answers are those of no other question. */
const certain: ReadonlySet<string> = new Set(['direction', 'leakage', 'wind', 'verdict', 'climate-zone'])

/** Groups of items that are of no single test. */
const notOfTest = /^(building|tester|today)$| and |, ducts$/
/** What is asked of a house only. */
const enclosure = /\b(blower door|enclosure|envelope|infiltration|whole house|50)\b/

function rolesAgree(group: string, { context, section, subjects }: Asked): boolean | undefined {
  const text = words(context).join(' ')
  const role = words(group).join(' ')
  if (!role) return undefined
  if (` ${text} `.includes(` ${role} `)) return true
  if (subjects.ducts.size > 0 && subjects.house && !notOfTest.test(group)) {
    const ofDucts = subjects.ducts.has(group)
    if (ducts.test(text) && !enclosure.test(text)) {
      if (!ofDucts) return false
      if (subjects.ducts.size === 1) return true
    } else if (ofDucts && enclosure.test(text)) return false
  }
  const sides = [before.test(role), after.test(role)]
  if (sides[0] !== sides[1] && before.test(text) !== after.test(text)) return before.test(text) === sides[0]
  // `After work` asks for the house after work: a system of ducts stands there only where ducts are spoken of.
  if (ducts.test(role) && (before.test(text) || after.test(text)) && !ducts.test(text)) return false
  // Two systems of one house: `duct system 1` does not stand under `Duct system 2`.
  return alike(section, group) > 0 && contradict(section, group) ? false : undefined
}

function kindsAgree(id: string, item: Item, { kind, options }: Clues): number {
  switch (item.kind) {
    case 'quantity':
      return numberKinds.has(kind) ? 1 : lineKinds.has(kind) ? 0.8 : proseKinds.has(kind) ? 0.1 : 0
    case 'date':
      return dateKinds.has(kind) ? 1 : kind === 'text' ? 0.8 : kind === 'month' ? 0.5 : 0
    case 'choice':
      if (kind === 'combobox') return 0.8
      if (optionKinds.has(kind))
        return item.options.some(({ label, value }) => choose(label, [value], options) !== undefined) ? 1 : 0.2
      return tickKinds.has(kind) ? 0.6 : kind === 'text' ? 0.4 : 0
    case 'text':
      if (kind === 'text' || proseKinds.has(kind)) return 1
      if (kind === 'combobox' || kind === 'chips') return 0.8
      if (kind === 'number') return 0.3
      if (!optionKinds.has(kind)) return 0
      return chooseAmong(item.text, options) !== undefined || optionsAnswer(id, item, options) ? 1 : 0
  }
}

function rate(id: string, item: Item, ask: Asked): { score: number; reason: string } {
  let [worded, by] = wording(id, item, ask)
  let said = ask.clues.name
  // In a table the column may say what is asked for, and the row for which system.
  if (worded < 0.3 && ask.section && item.group && plain(said) === plain(item.group)) {
    said = ask.section
    ;[worded, by] = wording(id, item, { ...ask, label: words(said).join(' ') })
  }
  if (worded < 0.3) return { score: 0, reason: '' }
  const kind = kindsAgree(id, item, ask.clues)
  const role = rolesAgree(item.group, ask)
  const unit = unitsAgree(item, ask.unit)
  const opposed = contradict(said, item.label)
  let score =
    0.7 * worded +
    0.1 * kind +
    (role === undefined ? 0.05 : role ? 0.15 : 0) +
    (unit === undefined ? 0.02 : unit ? 0.05 : 0)
  if (kind === 0) score *= 0.4
  if (role === false) score *= 0.5
  if (unit === false) score *= 0.5
  if (opposed) score *= 0.6
  const agree = [by, role && say`legend`, unit && say`unit`].filter((each): each is string => Boolean(each))
  const last = agree.pop() ?? ''
  const reasons = [agree.length > 0 ? say`${agree.join(', ')} and ${last} agree` : say`${last} agrees`]
  if (role === false) reasons.push(say`stands under another heading than “${roleWords(item.group)}”`)
  if (unit === false) reasons.push(say`the unit does not`)
  return { score, reason: reasons.join('; ') }
}

/** Suggestions that are kept of each control: the likely ones, and those that take their place when they are bound. */
const kept = 24

/** Items that a control may ask for, best first. */
export function suggest(clues: Clues, material: Material): Suggestion[] {
  const ask = asked(clues, subjectsOf(material))
  return Object.entries(material.items)
    .map(([item, of]): Suggestion => Object.assign({ item }, rate(item, of, ask)))
    .filter(({ score }) => score >= 0.3)
    .toSorted((a, b) => b.score - a.score)
    .slice(0, kept)
}
