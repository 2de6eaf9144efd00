/** What a page says around a label: whose details a part of it asks for, and which answers a list offers. */
import { answersIn, choose } from '../choose.ts'
import type { Item, Material } from '../material.ts'
import { plain, words } from '../words.ts'

/** People and firms of whom a job knows nothing (common practice, no source). */
const someone =
  /\b(home ?owners?|(?<!\b(by|or) )owners?|applicants?|customers?|clients?|occupants?|tenants?|landlord|account holders?|payee|lender|realtor|agents?|manufacturer|suppliers?|installers?|installing|crew|emergency|spouse|designer|architect|engineer|notary|witness)\b/
/** The one who did the test. */
const tester =
  /\b(testers?|technicians?|raters?|auditors?|assessors?|verifiers?|inspectors?|tested by|(performed|conducted|completed|carried out) by|testing (company|agency|firm|contractor)|(performing|conducting|who (ran|did|performed)) the test|blower door operator)\b/
/** Fields of a person or a place, of which a page may ask for several. */
const personal: ReadonlySet<string> = new Set(
  'name company licence licence-expiry phone email address street unit town state postcode'.split(' '),
)
const trades = /\b(contractors?|builders?|subcontractors?)\b/

/** Whether a field of a person or place is asked for of someone else: the owner's phone, the customer's address. */
export function ofSomeoneElse(id: string, label: string, section: string): boolean {
  const field = id.slice(id.lastIndexOf('/') + 1)
  if (!personal.has(field)) return false
  if (someone.test(label)) return true
  if (tester.test(label)) return false
  if (id.startsWith('tester/') && trades.test(section) && !tester.test(section)) return true
  return someone.test(section) && !tester.test(section)
}

/** Whether the heading speaks of the one who did the test. */
export const ofTester = (section: string): boolean => tester.test(section)

/** So few options that answer say nothing: any question may be answered with yes or no. */
const few = 2

const zones = /^(climate )?(zone )?[0-8]( ?[abc])?( |$)/

/**
 * Whether the options of a list are the answers to the item's question and no other: each stands for one, none is left.
 * Yes and no answer anything.
 */
export function optionsAnswer(id: string, item: Item, options: readonly string[]): boolean {
  const answers = answersIn(options)
  if (answers.length < few || answers.some((each) => /^(yes|no|true|false)$/.test(plain(each)))) return false
  if (id === 'job/climate-zone')
    return answers.length > few && answers.every((each) => zones.test(words(each).join(' ')))
  if (item.kind !== 'choice') return false
  const stood = item.options.flatMap(({ label, value }) => choose(label, [value], answers) ?? [])
  return new Set(stood).size === answers.length
}

/** What the tests of a job are of, by group of the material: those of ducts, and the others. */
export interface Subjects {
  ducts: ReadonlySet<string>
  /** Whether there are tests of the house too. */
  house: boolean
}

/** Figures that only a test of ducts has. */
const ofDucts = /\/duct-(flow-25|share-of-air-handler)$|\/leakage$/
const ofHouse = /\/(flow-50|air-changes-50|leakage-exponent)$/

const known = new WeakMap<Material['items'], Subjects>()

export function subjectsOf({ items }: Material): Subjects {
  const before = known.get(items)
  if (before) return before
  const entries = Object.entries(items)
  const ducts = new Set(entries.flatMap(([id, { group }]) => (ofDucts.test(id) ? [group] : [])))
  const subjects = { ducts, house: entries.some(([id, { group }]) => ofHouse.test(id) && !ducts.has(group)) }
  known.set(items, subjects)
  return subjects
}
