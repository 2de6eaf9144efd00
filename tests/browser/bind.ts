/** Binding fixed texts to the controls of a test page, and receipts in one line each. */
import { readFile } from 'node:fs/promises'
import type { Material } from '../../lib/form/material.ts'
import type { Binding, Clues, ReceiptLine } from '../../lib/form/schema.ts'
import type { Bench } from './isolated.ts'

export const page = (name: string) => readFile(new URL(`../pages/controls/${name}.html`, import.meta.url), 'utf8')

export const material: Material = { job: { id: 'j', name: '14 Tannery Row' }, items: {} }

/**
 * One binding per text, by the control's name and, if need be, the section that the page shows.
 * @throws when the page shows no such control
 */
export async function bind(bench: Bench, texts: Record<string, string>): Promise<Binding[]> {
  const clues = await bench.call<Clues[]>('clues')
  return Object.entries(texts).map(([id, text]) => {
    const [name, section] = id.split(' | ')
    const control = clues.find((each) => each.name === name && (section === undefined || each.section === section))
    if (!control)
      throw new Error(`The page shows no control “${id}”, only: ${clues.map((each) => each.name).join(', ')}`)
    return { id, control, source: { from: 'text', text } }
  })
}

export async function fillIn(bench: Bench, texts: Record<string, string>): Promise<Record<string, string>> {
  await bench.call('makePlan', await bind(bench, texts), material)
  return summary(await bench.call<ReceiptLine[]>('runFill'))
}

export function summary(lines: readonly ReceiptLine[]): Record<string, string> {
  return Object.fromEntries(
    lines.map(({ binding, outcome, readBack, note }) => [binding, `${outcome}: ${readBack}${note && ` (${note})`}`]),
  )
}
