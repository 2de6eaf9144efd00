/** Finding the control of a binding again by its clues; when two fit equally well, saying so instead of guessing. */
import { cluesOf } from '../page/clues.ts'
import type { Control } from '../page/controls.ts'
import { exchangeable } from '../kind-traits.ts'
import type { Binding, Clues } from '../schema.ts'
import { alike, asksAlike, contradict, narrower, plain, saysMore } from '../words.ts'

export type Found = { found: Control } | { ambiguous: Control[] } | { notFound: true; nearest?: Control }

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
/** One below this is not even named as the nearest. */
const near = 0.35

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

/**
 * How well a control fits the clues, 0 to 1: the share of the evidence that agrees. Opposite words or other numbers in
 * name or section (before and after, system 1 and system 2) rule a control out whatever else agrees.
 */
export function fit(mapped: Clues, now: Clues): number {
  if (mapped.kind !== now.kind && !exchangeable.some((set) => set.has(mapped.kind) && set.has(now.kind))) return 0
  let agreed = mapped.kind === now.kind ? weights.kind : 0
  let all = weights.kind
  const weigh = (weight: number, share: number | undefined) => {
    if (share === undefined) return
    all += weight
    agreed += weight * share
  }
  if (contradict(mapped.name, now.name) || contradict(mapped.section, now.section)) return 0
  if (!sameFrame(mapped, now)) return 0
  const attributes = sameAttributes(mapped, now)
  // Ids and names that the page itself gives to one control only outweigh a label that was written anew.
  const identical = Object.entries(mapped.attributes).some(
    ([key, value]) => identity.test(key) && now.attributes[key] === value,
  )
  const name = mapped.name || now.name ? asksAlike(mapped.name, now.name) : undefined
  if (name !== undefined) weigh(weights.name, name)
  let section: number | undefined
  const heading = compareHeadings(mapped.section, now.section)
  if (mapped.section || now.section) weigh(weights.section, (section = heading.alike))
  // What a redesign names anew says little against a control; the same name says much for it.
  if (attributes !== undefined) weigh(attributes < 0.5 ? weights.otherAttributes : weights.attributes, attributes)
  if (mapped.placeholder) weigh(weights.placeholder, alike(mapped.placeholder, now.placeholder))
  const options = sameOptions(mapped.options, now.options)
  weigh(weights.options, options)
  if (mapped.shadow || now.shadow)
    weigh(weights.shadow, (mapped.shadow ?? []).join() === (now.shadow ?? []).join() ? 1 : 0)
  let score = agreed / all
  // The same label under another heading is likely the other control, unless the page itself gives both the same name.
  if (section !== undefined && section < 0.5 && attributes !== 1) score *= 0.8
  // So is one with other options; a list that holds nothing but its prompt gets them later.
  if (!identical && options !== undefined && options < 0.5 && now.options.length > 1) score = Math.min(score, 0.55)
  // So is one under a heading with a word more.
  if (!identical && heading.narrower) score = Math.min(score, 0.55)
  // A label that asks for something else is another control, however much the rest agrees; one with a word more
  // (“Second test date”) also where the page gives both the same name.
  if (name !== undefined && name < 0.6 && (!identical || saysMore(mapped.name, now.name))) score = Math.min(score, 0.55)
  return score
}

/** The worse the best one fits, the more clearly it must beat the next. */
function marginFor(best: number): number {
  return 0.04 + 0.3 * (1 - best)
}

function decide(scored: readonly { control: Control; score: number }[]): { answer: Found; score: number } {
  const ranked = scored.toSorted((a, b) => b.score - a.score)
  const best = ranked[0]
  if (!best || best.score < enough) {
    const answer: Found = best ? { notFound: true, nearest: best.control } : { notFound: true }
    return { answer, score: 0 }
  }
  const floor = Math.max(enough, best.score - marginFor(best.score))
  const rivals = ranked.filter(({ score }) => score >= floor)
  if (rivals.length === 1) return { answer: { found: best.control }, score: best.score }
  return { answer: { ambiguous: rivals.map(({ control }) => control).toSorted(inOrder) }, score: best.score }
}

function inOrder(a: Control, b: Control): number {
  return a.element.compareDocumentPosition(b.element) & Node.DOCUMENT_POSITION_FOLLOWING ? -1 : 1
}

/**
 * Finds the controls of all bindings so that none is given twice: the binding that fits best takes its control, the
 * others choose among the rest. Two bindings that claim one control equally well are both ambiguous.
 */
export function findAll(bindings: readonly Binding[], controls: readonly Control[]): Map<string, Found> {
  // A map may bind each box of a date by itself.
  const all = controls.flatMap((control) => [control].concat(control.parts ?? []))
  const scores = new Map(bindings.map(({ id }) => [id, [] as { control: Control; score: number }[]]))
  // Control by control, so that what is worked out about the texts of each is needed only now.
  for (const control of all) {
    const shown = cluesOf(control)
    for (const { id, control: mapped } of bindings) {
      const score = fit(mapped, shown)
      if (score >= near) scores.get(id)?.push({ control, score })
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
