/** Writing a plan into the page, control by control, and reading every one back. Never submits anything. */
import { listControls, nameOfControl, type Control } from '../page/controls.ts'
import { alive } from '../page/dom.ts'
import { barred } from '../page/gate.ts'
import { fileOf } from './file.ts'
import { findAll } from '../map/find.ts'
import { kept } from '../kept.ts'
import { addedKinds } from '../kind-traits.ts'
import { sectionOf } from '../page/names.ts'
import { notationOf, type Notation } from './notation.ts'
import type { Plan } from './plan.ts'
import { behind, complaint, settle, shown, type Patience } from './read.ts'
import { alikeIn } from './same-entry.ts'
import type { ControlKind, Outcome, PlanLine, ReceiptLine } from '../schema.ts'
import { isExtra } from '../kinds/extra-kinds.ts'
import { write } from '../kinds/write.ts'
import { isNoOption } from '../kinds/writing/reasons.ts'
import { say } from '../../words/say.ts'

export interface FillOptions {
  /** Ids of the bindings to write; the others are left alone and get no line. */
  chosen: ReadonlySet<string>
  signal?: AbortSignal
  /** Hears each line as soon as it is known, and once more when the page changed the control later. */
  onLine?: (line: ReceiptLine) => void
  /** Asked before each control: why nothing more may be typed, if so. */
  ready?: () => Promise<string | undefined>
  /** Brings the writers of kinds that no form map named, when a control has turned out to be of one. */
  bring?: () => Promise<unknown>
  /** How long to wait for the page after each control, and once at the end. */
  each?: Patience
  last?: Patience
  /** Milliseconds to go on looking for controls and options that are not there yet. */
  late?: number
}

const eachPatience: Patience = { quiet: 50, limit: 700 }
const lastPatience: Patience = { quiet: 250, limit: 2500 }

const changed = say`the page changed it`

type Place = { control: Control } | { ambiguous: Control[] } | undefined

/** In a frame that was taken away everything stays connected to its document, which no window shows. */
const onPage = (element: Element): boolean => alive(element) && element.ownerDocument.defaultView !== null

/** Whether the control still is the one that was planned: on the page, under the same name and heading. */
function still({ elements, kind, name, section }: Control): boolean {
  const [first] = elements
  if (!first || !elements.every(onPage)) return false
  return nameOfControl(kind, elements) === name && sectionOf(elements, name) === section
}

/** The control of a binding now: the planned one, or, when the page drew it anew, the one found by the clues. */
function locate(plan: Plan, id: string): Place {
  const target = plan.targets.get(id)
  if (target && still(target)) return { control: target }
  const found = findAll(plan.bindings, listControls(plan.document)).get(id)
  if (!found || 'notFound' in found) return undefined
  if ('found' in found) {
    plan.targets.set(id, found.found)
    return { control: found.found }
  }
  // The person's own answer to "which of these" holds as long as as many fit, in the same order.
  const candidates = plan.candidates.get(id)
  const control =
    target && candidates?.length === found.ambiguous.length ? found.ambiguous[candidates.indexOf(target)] : undefined
  if (!control) return found
  plan.targets.set(id, control)
  plan.candidates.set(id, found.ambiguous)
  return { control }
}

function result(outcome: Outcome, ...notes: string[]): Pick<ReceiptLine, 'outcome' | 'note'> {
  return { outcome, note: notes.filter(Boolean).join('; ') }
}

const pageSays = (says: string): string => says && say`the page says: ${says}`

/** What became of a text that was written. */
export function judge(
  intended: string,
  before: string,
  readBack: string,
  says: string,
  kind: ControlKind = 'text',
  notation?: Notation,
): Pick<ReceiptLine, 'outcome' | 'note'> {
  const page = pageSays(says)
  const same = alikeIn(kind, intended, readBack, notation)
  if (same === 'in other words') return result('entered', say`the page words it “${readBack}”`, page)
  if (same === 'same') return result('entered', page)
  if (readBack === '') return result('refused', page || say`the page emptied it`)
  if (readBack === before) return result('refused', page || say`the page kept what was there`)
  return result('differs', changed, page)
}

/** What became of a text, also where the page holds apart what it shows and what it submits. */
function verdict(
  intended: string,
  before: string,
  readBack: string,
  control: Control,
  { exact, bindings, material }: Pick<Plan, 'exact' | 'bindings' | 'material'>,
  id: string,
): Pick<ReceiptLine, 'outcome' | 'note'> {
  // Where a fill adds to what is there, putting back is right only when nothing is left of it.
  const kind = exact && addedKinds.has(control.kind) ? 'text' : control.kind
  const now = control.far ? undefined : barred(control.element)
  if (now !== undefined && readBack !== '') return result('differs', say`look there: it ${now}`)
  // What is put back was the page's own.
  const source = exact ? undefined : bindings.find((each) => each.id === id)?.source
  const notation = notationOf(control, source, material)
  const judged = judge(intended, before, readBack, complaint(control), kind, notation)
  const submitted = behind(control)
  if (judged.outcome !== 'entered' || submitted === undefined || submitted === readBack) return judged
  return result('differs', say`the page shows “${readBack}” but would submit “${submitted}”`, judged.note)
}

function receiptOf(line: PlanLine, rest: Partial<ReceiptLine>): ReceiptLine {
  return {
    binding: line.binding,
    control: line.control,
    section: line.section,
    source: line.source,
    intended: line.text,
    before: line.now,
    readBack: '',
    outcome: 'refused',
    note: '',
    ...rest,
  }
}

interface Attempt {
  receipt: ReceiptLine
  /** Whether a later attempt may do better: the control has not mounted, or its options have not arrived. */
  again: boolean
}

async function enter(
  plan: Plan,
  line: PlanLine,
  patience: Patience,
  { signal, bring }: Pick<FillOptions, 'signal' | 'bring'>,
): Promise<Attempt> {
  const end = (rest: Partial<ReceiptLine>, again = false): Attempt => ({ receipt: receiptOf(line, rest), again })
  const place = locate(plan, line.binding)
  const readNow = place && 'control' in place ? shown(place.control) : ''
  if (line.state === 'refused') return end({ note: line.note, readBack: readNow })
  if (!place) return end({ outcome: 'not found', note: say`no control of the page fits` }, true)
  if ('ambiguous' in place)
    return end({ outcome: 'ambiguous', note: say`${place.ambiguous.length} controls fit equally well` })
  const { control } = place
  const named = { control: control.name, section: control.section, before: readNow }
  if (line.state === 'already there' && readNow === line.now)
    return end({ ...named, outcome: 'entered', readBack: readNow, note: say`was already there, left as it is` })
  if (!control.far && isExtra(control.kind) && !kept('gapsumWriters')) await bring?.()
  const file = plan.files?.get(line.binding)
  const { reason, held } = await write(control, line.text, file && fileOf(file), plan.exact)
  if (reason !== undefined && (control.far || onPage(control.element))) {
    const left = shown(control)
    // It may have begun to type.
    const outcome = left === readNow ? 'refused' : 'differs'
    return end({ ...named, outcome, readBack: left, note: reason }, isNoOption(reason))
  }
  await settle([plan.document, control.element], patience, signal)
  const after = locate(plan, line.binding)
  if (!after || 'ambiguous' in after) {
    const note = say`the page took the control away while it was filled: look there`
    return end({ ...named, outcome: after ? 'ambiguous' : 'not found', note })
  }
  const readBack = shown(after.control)
  const { outcome, note } = verdict(line.text, readNow, readBack, after.control, plan, line.binding)
  // The page drew the control anew while it was written, so that the text went into the old one: once more.
  const torn = outcome === 'refused' && !control.far && !alive(control.element)
  const submit = held ? say`the page tried to submit the form at this and was kept from it` : ''
  return end({ ...named, readBack, ...result(outcome, note, submit) }, torn)
}

/** Whether a control still is as its line says, without a look at the whole page. */
export function asItWas({ targets }: Plan, { binding, readBack }: ReceiptLine): boolean {
  const target = targets.get(binding)
  if (!target || !still(target) || shown(target) !== readBack) return false
  return target.far !== undefined || (barred(target.element) === undefined && (behind(target) ?? readBack) === readBack)
}

/** Reads a control once more: pages check and change entries after the person has gone on to the next. */
export function readAgain(plan: Plan, receipt: ReceiptLine): ReceiptLine {
  const place = locate(plan, receipt.binding)
  if (!place || 'ambiguous' in place) {
    const note = say`the page took the control away after it was filled: look there`
    return { ...receipt, readBack: '', outcome: place ? 'ambiguous' : 'not found', note }
  }
  const readBack = shown(place.control)
  if (readBack === receipt.readBack && (receipt.outcome !== 'entered' || asItWas(plan, receipt))) {
    // A page may check an entry only when the person has gone on.
    const says = complaint(place.control)
    return receipt.note.includes(says)
      ? receipt
      : { ...receipt, ...result(receipt.outcome, receipt.note, pageSays(says)) }
  }
  const { outcome, note } = verdict(receipt.intended, receipt.before, readBack, place.control, plan, receipt.binding)
  const later = note.replace(changed, '').replace(/^; /, '')
  return {
    ...receipt,
    readBack,
    outcome,
    note: [say`changed by the page after it was entered`, later].filter(Boolean).join('; '),
  }
}

/** Writes the chosen lines of a plan; each ends with an outcome, whatever the page does meanwhile. */
export async function fill(plan: Plan, options: FillOptions): Promise<ReceiptLine[]> {
  const { chosen, signal, onLine, each = eachPatience, last = lastPatience, late = 2000 } = options
  const lines = plan.lines.filter(({ binding }) => chosen.has(binding))
  const receipts = new Map<string, ReceiptLine>()
  const keep = (receipt: ReceiptLine) => {
    receipts.set(receipt.binding, receipt)
    onLine?.(receipt)
  }

  // A control may mount, and options may arrive, only after another control was set: what failed for that reason is
  // tried again as long as something new succeeds, and then for a while longer.
  let waiting: Attempt[] = []
  let next = lines
  let why: string | undefined
  let deadline = Date.now() + late
  while (next.length > 0) {
    if (signal?.aborted || why !== undefined) break
    waiting = []
    for (const line of next) {
      why ??= await options.ready?.()
      if (signal?.aborted || why !== undefined) break
      const attempt = await enter(plan, line, each, options)
      if (attempt.again) waiting.push(attempt)
      else keep(attempt.receipt)
    }
    if (waiting.length < next.length) deadline = Date.now() + late
    else if (Date.now() > deadline) break
    const open = new Set(waiting.map(({ receipt }) => receipt.binding))
    next = lines.filter(({ binding }) => open.has(binding))
    if (next.length > 0) await settle([plan.document], { quiet: 200, limit: 700 }, signal)
  }
  for (const { receipt } of waiting) keep(receipt)

  await settle([plan.document, ...[...plan.targets.values()].map(({ element }) => element)], last, signal)
  for (const line of lines) {
    const receipt = receipts.get(line.binding)
    if (!receipt) {
      const note = why === undefined ? say`stopped before this control` : say`stopped before this control: ${why}`
      keep(receiptOf(line, { note, readBack: line.now }))
    }
    if (receipt?.outcome === 'entered' || receipt?.outcome === 'differs') {
      const again = readAgain(plan, receipt)
      if (again !== receipt) keep(again)
    }
  }
  return lines.flatMap(({ binding }) => receipts.get(binding) ?? [])
}
