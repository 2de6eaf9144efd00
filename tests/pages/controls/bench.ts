/** What the tests call in the isolated world: lib/form with plain data in and out. */
import { cluesOf } from '../../../lib/form/page/clues.ts'
import { listControls, survey, type Control } from '../../../lib/form/page/controls.ts'
import { fill } from '../../../lib/form/fill/fill.ts'
import { findAll } from '../../../lib/form/map/find.ts'
import type { Material } from '../../../lib/form/material.ts'
import { pick, plan, type Plan } from '../../../lib/form/fill/plan.ts'
import type { Binding, Clues, ReceiptLine } from '../../../lib/form/schema.ts'
import { propose } from '../../../lib/form/map/propose.ts'
import { suggestAll } from '../../../lib/form/map/suggest-all.ts'
import { undoPlan } from '../../../lib/form/fill/undo.ts'
import { offerExtra } from '../../../lib/form/kinds/write-extra.ts'

offerExtra()

let current: Plan | undefined
let receipts: ReceiptLine[] = []
const heard: ReceiptLine[] = []

function kept(): Plan {
  if (!current) throw new Error('No plan was made yet.')
  return current
}

export function clues(): Clues[] {
  return listControls(document).map(cluesOf)
}

export function leftOut(): { name: string; reason: string; detail: string }[] {
  return survey(document).leftOut.map(({ name, reason, detail }) => ({ name, reason, detail }))
}

function where({ element }: Control): string {
  return element.id || element.getAttribute('name') || ''
}

export function found(wanted: Clues): string {
  const binding: Binding = { id: 'one', control: wanted, source: { from: 'text', text: '' } }
  const answer = findAll([binding], listControls(document)).get('one')!
  if ('found' in answer) return `found ${where(answer.found)}`
  if ('ambiguous' in answer) return `ambiguous ${answer.ambiguous.map(where).join(' ')}`
  return answer.nearest.length > 0 ? `not found, nearest ${answer.nearest.map(where).join(' ')}` : 'not found'
}

/** Section and name of each control, beside what the page says a reader would call it. */
export function named(): { is: string | undefined; got: string }[] {
  return listControls(document).map(({ element, section, name }) => ({
    is: element.dataset['is'],
    got: `${section} / ${name}`,
  }))
}

/** Milliseconds that listing the page and making a plan of the bindings take. */
export function duration(bindings: Binding[], material: Material): { list: number; plan: number; count: number } {
  const start = performance.now()
  const count = listControls(document).length
  const middle = performance.now()
  plan({ bindings }, material, document)
  return { count, list: middle - start, plan: performance.now() - middle }
}

export function suggestions(
  material: Material,
): { control: string; section: string; item: string; reason: string; clear: boolean }[] {
  const controls = listControls(document)
  const suggested = suggestAll(controls.map(cluesOf), material)
  return controls.map((control, at) => {
    const [best] = propose(suggested[at] ?? [])
    return {
      control: control.name,
      section: control.section,
      item: best?.item ?? '',
      reason: best?.reason ?? '',
      clear: best?.clear ?? false,
    }
  })
}

export function makePlan(
  bindings: Binding[],
  material: Material,
): Omit<Plan, 'document' | 'bindings' | 'targets' | 'candidates'> {
  current = plan({ bindings }, material, document)
  return { lines: current.lines, leftToYou: current.leftToYou }
}

export function pickCandidate(binding: string, index: number, material: Material): void {
  const control = kept().candidates.get(binding)?.[index]
  if (control) current = pick(kept(), binding, control, material)
}

export async function runFill(chosen?: string[]): Promise<ReceiptLine[]> {
  heard.length = 0
  receipts = await fill(kept(), {
    chosen: new Set(chosen ?? kept().lines.map(({ binding }) => binding)),
    onLine: (line) => heard.push(line),
  })
  return receipts
}

/** Every line that was reported on the way, in order. */
export function reported(): ReceiptLine[] {
  return heard
}

export function stoppedFill(after: number): Promise<ReceiptLine[]> {
  const stop = new AbortController()
  let count = 0
  return fill(kept(), {
    chosen: new Set(kept().lines.map(({ binding }) => binding)),
    signal: stop.signal,
    onLine: () => {
      count++
      if (count === after) stop.abort()
    },
  })
}

export function runUndo(): Promise<ReceiptLine[]> {
  const back = undoPlan(receipts, kept())
  return fill(back, { chosen: new Set(back.lines.map(({ binding }) => binding)) })
}
