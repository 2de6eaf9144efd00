/** Writing a plan into the page, control by control, and reading every one back. Never submits anything. */
import { listControls, type Control } from './controls.ts'
import { findAll } from './find.ts'
import { groupName, nameOf } from './names.ts'
import type { Plan } from './plan.ts'
import { complaint, settle, shown, type Patience } from './read.ts'
import { sameness } from './same.ts'
import type { Outcome, PlanLine, ReceiptLine } from './schema.ts'
import { write } from './write/index.ts'

export interface FillOptions {
  /** Ids of the bindings to write; the others are left alone and get no line. */
  chosen: ReadonlySet<string>
  signal?: AbortSignal
  /** Hears each line as soon as it is known, and once more when the page changed the control later. */
  onLine?: (line: ReceiptLine) => void
  /** How long to wait for the page after each control, and once at the end. */
  each?: Patience
  last?: Patience
}

const eachPatience: Patience = { quiet: 50, limit: 700 }
const lastPatience: Patience = { quiet: 250, limit: 2500 }

type Place = { control: Control } | { ambiguous: Control[] } | undefined

/** Whether the control still is the one that was planned: on the page, and under the same name. */
function still({ elements, kind, name }: Control): boolean {
  const [first] = elements
  if (!first || !elements.every((element) => element.isConnected)) return false
  return (kind === 'radio' ? groupName(elements) || nameOf(first) : nameOf(first)) === name
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

/** What became of a text that was written. */
export function judge(
  intended: string,
  before: string,
  readBack: string,
  says: string,
): Pick<ReceiptLine, 'outcome' | 'note'> {
  const page = says && `the page says: ${says}`
  const same = sameness(intended, readBack)
  if (same === 'same') return result('entered', page)
  if (readBack === '') return result('refused', page || 'the page emptied it')
  if (same === 'same number') {
    const separator = /\d[,.' \u00A0\u202F’]\d{3}/.test(readBack) && !/\d[,.' \u00A0\u202F’]\d{3}/.test(intended)
    return result(
      'differs',
      separator ? 'same number; the page put in a separator' : 'same number; the page writes it differently',
      page,
    )
  }
  if (readBack === before) return result('refused', page || 'the page kept what was there')
  return result('differs', 'the page changed it', page)
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

/** Writes the chosen lines of a plan; each ends with an outcome, whatever the page does meanwhile. */
export async function fill(plan: Plan, options: FillOptions): Promise<ReceiptLine[]> {
  const { chosen, signal, onLine } = options
  const lines = plan.lines.filter(({ binding }) => chosen.has(binding))
  const receipts = new Map<string, ReceiptLine>()
  const keep = (receipt: ReceiptLine) => {
    receipts.set(receipt.binding, receipt)
    onLine?.(receipt)
  }
  const enter = async (line: PlanLine): Promise<ReceiptLine> => {
    const place = locate(plan, line.binding)
    if (line.state === 'refused')
      return receiptOf(line, { note: line.note, readBack: place && 'control' in place ? shown(place.control) : '' })
    if (!place) return receiptOf(line, { outcome: 'not found', note: line.note.includes('nearest') ? line.note : '' })
    if ('ambiguous' in place) return receiptOf(line, { outcome: 'ambiguous', note: line.note })
    const { control } = place
    const named = { control: control.name, section: control.section, before: shown(control) }
    if (line.state === 'already there' && named.before === line.now)
      return receiptOf(line, {
        ...named,
        outcome: 'entered',
        readBack: named.before,
        note: 'was already there, left as it is',
      })
    const reason = write(control, line.text)
    if (reason) return receiptOf(line, { ...named, outcome: 'refused', readBack: shown(control), note: reason })
    await settle([plan.document, control.element], options.each ?? eachPatience, signal)
    const after = locate(plan, line.binding)
    if (!after || 'ambiguous' in after)
      return receiptOf(line, {
        ...named,
        outcome: after ? 'ambiguous' : 'not found',
        note: 'the page replaced the control after the text was written: look there',
      })
    const readBack = shown(after.control)
    return receiptOf(line, {
      ...named,
      readBack,
      ...judge(line.text, named.before, readBack, complaint(after.control)),
    })
  }

  const later: PlanLine[] = []
  for (const line of lines) {
    if (signal?.aborted) break
    const receipt = await enter(line)
    // A control may mount, and options may arrive, only after another control was set.
    if (receipt.outcome === 'not found' || (receipt.outcome === 'refused' && receipt.note.startsWith('has no option')))
      later.push(line)
    else keep(receipt)
  }
  await settle([plan.document], options.last ?? lastPatience, signal)
  for (const line of later) {
    if (!signal?.aborted) keep(await enter(line))
  }
  if (later.length > 0) await settle([plan.document], options.last ?? lastPatience, signal)

  for (const line of lines) {
    const receipt = receipts.get(line.binding)
    if (!receipt) {
      keep(receiptOf(line, { outcome: 'refused', note: 'stopped before this control', readBack: line.now }))
      continue
    }
    if (receipt.outcome !== 'entered' && receipt.outcome !== 'differs') continue
    const place = locate(plan, line.binding)
    if (!place || 'ambiguous' in place) {
      keep({
        ...receipt,
        readBack: '',
        outcome: place ? 'ambiguous' : 'not found',
        note: 'the page took the control away after it was filled',
      })
      continue
    }
    const readBack = shown(place.control)
    if (readBack === receipt.readBack) continue
    const { outcome, note } = judge(receipt.intended, receipt.before, readBack, complaint(place.control))
    keep({
      ...receipt,
      readBack,
      outcome,
      note: [note, 'changed by the page after it was entered'].filter(Boolean).join('; '),
    })
  }
  return lines.flatMap(({ binding }) => receipts.get(binding) ?? [])
}
