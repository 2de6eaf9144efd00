/** Runs beside the pages of the form measurements. */
import { cluesOf } from '../../lib/form/page/clues.ts'
import { listControls } from '../../lib/form/page/controls.ts'
import { fill } from '../../lib/form/fill/fill.ts'
import { findAll } from '../../lib/form/map/find.ts'
import type { Material } from '../../lib/form/material.ts'
import { plan } from '../../lib/form/fill/plan.ts'
import type { Binding } from '../../lib/form/schema.ts'
import { offerExtra } from '../../lib/form/kinds/write-extra.ts'

offerExtra()

const material: Material = { job: { id: 'j', name: '14 Tannery Row' }, items: {} }

const bindingsOf = (texts: readonly string[], step: number): Binding[] =>
  listControls(document)
    .filter((_, index) => index % step === 0)
    .slice(0, texts.length)
    .map((control, index) => ({
      id: String(index),
      control: cluesOf(control),
      source: { from: 'text', text: texts[index] ?? '' },
    }))

/** Fills and reads back; milliseconds, and how many lines are entered. */
export async function filled(texts: readonly string[]): Promise<{ ms: number; entered: number }> {
  const bindings = bindingsOf(texts, 1)
  const start = performance.now()
  const lines = await fill(plan({ bindings }, material, document), { chosen: new Set(bindings.map(({ id }) => id)) })
  return { ms: performance.now() - start, entered: lines.filter(({ outcome }) => outcome === 'entered').length }
}

/** Sets the values and sends the events without looking at what becomes of them. */
export function bare(texts: readonly string[]): number {
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set
  const start = performance.now()
  for (const [index, input] of [...document.querySelectorAll('input')].slice(0, texts.length).entries()) {
    set?.call(input, texts[index])
    input.dispatchEvent(new Event('input', { bubbles: true }))
    input.dispatchEvent(new Event('change', { bubbles: true }))
  }
  return performance.now() - start
}

/** Milliseconds to list a page and find 40 of its controls. */
export function finding(): { list: number; find: number; controls: number; found: number } {
  const texts = Array.from({ length: 40 }, () => '')
  const bindings = bindingsOf(texts, 125)
  const start = performance.now()
  const controls = listControls(document)
  const middle = performance.now()
  const answers = findAll(bindings, controls)
  const end = performance.now()
  const found = [...answers.values()].filter((answer) => 'found' in answer).length
  return { list: middle - start, find: end - middle, controls: controls.length, found }
}
