/** Finding the control of a binding again by its clues; when two fit equally well, saying so instead of guessing. */
import { cluesOf } from '../page/clues.ts'
import type { Control } from '../page/controls.ts'
import { exchangeable } from '../kind-traits.ts'
import type { Binding, Clues } from '../schema.ts'
import { alike, asksAlike, contradict, meansAlike, narrower, plain } from '../words.ts'

export type Found =
  | { found: Control }
  | { ambiguous: Control[] }
  /** `nearest`: what it may be by now, the likeliest first; only the person takes one of these. */
  | { notFound: true; nearest: Control[] }

const weights = {
  kind: 1,
  name: 5,
  section: 3,
  attributes: 4,
  otherAttributes: 1,
  placeholder: 1,
  options: 2,
  shadow: 1,
}
/** Attributes by which a page tells one control from all others. A library's own `data-x-name` names the kind of part. */
const identity = /^(host )?(id|(?!data-)[\w-]*(name|model)|data-((field|control|form|item)-?)?(name|model))$/
/** A fit below this is no fit. */
const enough = 0.6
/** One below this is not even offered as the nearest. */
const near = 0.35
/** What is not to be taken silently fits this well at most. */
const doubtful = 0.55
/** Labels that are this much alike ask for the same: other case, other marks, another notation, the unit or not. */
const same = 0.9
/** So much is enough where the page gives the control the same name: a hint more or less. */
const sameByName = 0.85
/** So many of the nearest are offered, if they are not this much worse than the first. */
const offered = 3
const muchWorse = 0.25

function sameAttributes(mapped: Clues, now: Clues): number | undefined {
  const shared = Object.keys(mapped.attributes).filter((key) => key in now.attributes)
  if (shared.length === 0) return Object.keys(mapped.attributes).length > 0 ? 0 : undefined
  return shared.filter((key) => mapped.attributes[key] === now.attributes[key]).length / shared.length
}

function sameFrame({ frame: mapped }: Clues, { frame: now }: Clues): boolean {
  return mapped?.origin === now?.origin && mapped?.path === now?.path
}

function sameOptions(mapped: readonly string[], now: readonly string[]): number | undefined {
  if (mapped.length === 0 || now.length === 0) return undefined
  const shown = new Set(now.map(plain))
  const shared = mapped.filter((option) => shown.has(plain(option))).length
  return shared / (mapped.length + now.length - shared)
}

interface Headings {
  alike: number
  narrower: boolean
}

const headings = new Map<string, Map<string, Headings>>()

/** How two headings compare; remembered, because most controls of a page stand under few. */
function compareHeadings(mapped: string, now: string): Headings {
  let known = headings.get(mapped)
  let found = known?.get(now)
  if (found) return found
  found = { alike: Math.max(alike(mapped, now), asksAlike(mapped, now)), narrower: narrower(mapped, now) }
  if (!known || known.size > 2000 || headings.size > 2000) {
    if (headings.size > 2000) headings.clear()
    headings.set(mapped, (known = new Map()))
  }
  known.set(now, found)
  return found
}

/** A box for one part of a date, and an attribute that names nothing but the part: neither tells one date from another. */
const partName = /^(dd?|mm?|yy(yy)?|day|month|year)$/i
const partAttribute = /^(d|dt|date)?[^a-z]*(day|month|year|dd?|mm?|yy(yy)?)[^a-z]*$/i

interface Fit {
  /** How well the control fits, 0 to 1; below `enough` it is not taken. */
  score: number
  /** How near it comes where nothing fits, 0 to 1. */
  nearness: number
}

const none: Fit = { score: 0, nearness: 0 }

/**
 * How well a control fits the clues: the share of the evidence that agrees. Opposite words or other numbers in name or
 * section (before and after, system 1 and system 2) rule a control out whatever else agrees; a label or heading that
 * asks for something else, or that one cannot be sure of, makes it a question for the person.
 */
function fitOf(mapped: Clues, now: Clues): Fit {
  if (mapped.kind !== now.kind && !exchangeable.some((set) => set.has(mapped.kind) && set.has(now.kind))) return none
  let agreed = mapped.kind === now.kind ? weights.kind : 0
  let all = weights.kind
  const weigh = (weight: number, share: number | undefined) => {
    if (share === undefined) return
    all += weight
    agreed += weight * share
  }
  if (contradict(mapped.name, now.name) || contradict(mapped.section, now.section)) return none
  if (!sameFrame(mapped, now)) return none
  const attributes = sameAttributes(mapped, now)
  const inParts = mapped.kind === 'date-boxes' || mapped.kind === 'date-sections'
  // Ids and names that the page itself gives to one control only; a part's own name is given to a part of every date.
  const identical =
    !inParts &&
    Object.entries(mapped.attributes).some(
      ([key, value]) => identity.test(key) && now.attributes[key] === value && !partAttribute.test(value),
    )
  const heading = compareHeadings(mapped.section, now.section)
  const section = mapped.section || now.section ? heading.alike : undefined
  weigh(weights.section, section)
  // What a redesign names anew says little against a control; the same name says much for it.
  if (attributes !== undefined) weigh(attributes < 0.5 ? weights.otherAttributes : weights.attributes, attributes)
  if (mapped.placeholder) weigh(weights.placeholder, alike(mapped.placeholder, now.placeholder))
  const options = sameOptions(mapped.options, now.options)
  weigh(weights.options, options)
  if (mapped.shadow || now.shadow)
    weigh(weights.shadow, (mapped.shadow ?? []).join() === (now.shadow ?? []).join() ? 1 : 0)
  const named = mapped.name !== '' || now.name !== ''
  const name = named ? asksAlike(mapped.name, now.name) : 1
  const sure = identical ? sameByName : same
  const meaning = name >= sure ? name : meansAlike(mapped.name, now.name)
  const share = (by: number) => (named ? (agreed + weights.name * by) / (all + weights.name) : agreed / all)
  const nearness = share(Math.max(name, meaning))
  let score = share(name)
  // The same label under another heading is likely the other control, unless the page itself gives both the same name.
  if (section !== undefined && section < 0.5 && attributes !== 1) score *= 0.8
  const doubt =
    // Another label asks for another item, whatever the page calls the control; the same in another notation does not.
    (name < sure && !(identical && meaning >= same)) ||
    (partName.test(mapped.name) && !identical && mapped.position !== now.position) ||
    // A heading with another word, or with a word more.
    (!identical && ((section !== undefined && section >= 0.5 && section < sameByName) || heading.narrower)) ||
    // Other options; a list that holds nothing but its prompt gets them later.
    (!identical && options !== undefined && options < 0.5 && now.options.length > 1)
  return { score: doubt ? Math.min(score, doubtful) : score, nearness }
}

/** How well a control fits the clues, 0 to 1. */
export const fit = (mapped: Clues, now: Clues): number => fitOf(mapped, now).score

/** The worse the best one fits, the more clearly it must beat the next. */
function marginFor(best: number): number {
  return 0.04 + 0.3 * (1 - best)
}

interface Scored extends Fit {
  control: Control
  /** Place among the controls of the page. */
  at: number
}

function decide(scored: readonly Scored[]): { answer: Found; score: number } {
  const best = scored.reduce((most, { score }) => Math.max(most, score), 0)
  if (best < enough) return { answer: { notFound: true, nearest: nearestOf(scored) }, score: 0 }
  const floor = Math.max(enough, best - marginFor(best))
  const rivals = scored.filter(({ score }) => score >= floor).map(({ control }) => control)
  const [first] = rivals
  if (first && rivals.length === 1) return { answer: { found: first }, score: best }
  return { answer: { ambiguous: rivals }, score: best }
}

function nearestOf(scored: readonly Scored[]): Control[] {
  const ranked = scored.toSorted((a, b) => b.nearness - a.nearness || a.at - b.at)
  const least = Math.max(near, (ranked[0]?.nearness ?? 0) - muchWorse)
  return ranked.flatMap(({ control, nearness }) => (nearness >= least ? [control] : [])).slice(0, offered)
}

/**
 * Finds the controls of all bindings so that none is given twice: the binding that fits best takes its control, the
 * others choose among the rest. Two bindings that claim one control equally well are both ambiguous.
 */
export function findAll(bindings: readonly Binding[], controls: readonly Control[]): Map<string, Found> {
  // A map may bind each box of a date by itself.
  const all = controls.flatMap((control) => [control].concat(control.parts ?? []))
  const scores = new Map(bindings.map(({ id }) => [id, [] as Scored[]]))
  // Control by control, so that what is worked out about the texts of each is needed only now.
  for (const [at, control] of all.entries()) {
    const shown = cluesOf(control)
    for (const { id, control: mapped } of bindings) {
      const found = fitOf(mapped, shown)
      if (found.nearness >= near) scores.get(id)?.push({ control, at, ...found })
    }
  }
  const result = new Map<string, Found>()
  const taken = new Set<Control>()
  let open = [...scores.keys()]
  while (open.length > 0) {
    const answers = open.map((id) => ({
      id,
      ...decide((scores.get(id) ?? []).filter(({ control }) => !taken.has(control))),
    }))
    const claims = new Map<Control, { id: string; score: number }[]>()
    for (const { id, answer, score } of answers)
      if ('found' in answer) claims.set(answer.found, [...(claims.get(answer.found) ?? []), { id, score }])
    if (claims.size === 0) {
      for (const { id, answer } of answers) result.set(id, answer)
      break
    }
    for (const [control, claimants] of claims) {
      const best = Math.max(...claimants.map(({ score }) => score))
      const equal = claimants.filter(({ score }) => score >= best - marginFor(best))
      taken.add(control)
      for (const { id } of equal) result.set(id, equal.length > 1 ? { ambiguous: [control] } : { found: control })
    }
    open = open.filter((id) => !result.has(id))
  }
  return result
}
