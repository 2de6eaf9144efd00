/** The results of a test as a paragraph for a message, from words and figures that the person may arrange. */
import { type Item, type Material } from '../form/material.ts'
import type { Source } from '../form/schema.ts'
import { textOf } from '../form/fill/text.ts'
import { material } from '../job/material.ts'
import { roleKeys } from '../job/roles.ts'
import type { Device, Job, Test } from '../job/schema.ts'
import { say } from '../words/say.ts'
import type { VerdictProps } from './shown.ts'

export type Parts = Extract<Source, { from: 'words' }>['parts']

/** Stands before the items of whichever test is open, so that one wording serves every test. */
const here = 'test/'

const item = (id: string): Parts[number] => ({ item: id, write: {} })

/** The usual wording: what was tested and when, the result, the verdict, and whose edition counts; each where there is one. */
export function usualParts({ items }: Material): Parts {
  const has = (id: string) => Object.hasOwn(items, id)
  return [
    ...(has('job/address')
      ? [{ text: say`Air leakage test of ` }, item('job/address')]
      : [{ text: say`Air leakage test` }]),
    ...(has(`${here}date`) ? [{ text: say` on ` }, item(`${here}date`)] : []),
    { text: ': ' },
    item(`${here}result`),
    { text: '.' },
    ...[`${here}verdict-words`, `${here}edition`].flatMap((id) => (has(id) ? [{ text: ' ' }, item(id)] : [])),
  ]
}

/** Everything that a paragraph about `test` may name. */
export function paragraphMaterial(
  job: Job,
  test: Test,
  devices: readonly Device[],
  verdict: VerdictProps | undefined,
): Material {
  const whole = material(job, [...devices])
  const key = roleKeys(job.tests).get(test) ?? test.role
  const group = say`this test`
  const items: Record<string, Item> = {}
  const text = (id: string, label: string, words: string) => {
    if (words.trim() !== '') items[here + id] = { kind: 'text', label, group, text: words.trim() }
  }
  if (verdict) {
    const margin = verdict.margin.startsWith('−') ? ` (${verdict.margin})` : verdict.margin && ` ± ${verdict.margin}`
    text('result', say`result with its interval`, `${verdict.value}${margin} ${verdict.unit}`)
    text(
      'verdict-words',
      say`verdict in words`,
      verdict.verdict ? [`${verdict.verdict.text}.`, verdict.likely, ...verdict.notes].filter(Boolean).join(' ') : '',
    )
    text('edition', say`clause and whose edition counts`, verdict.source)
  }
  for (const [id, found] of Object.entries(whole.items)) {
    if (id.startsWith(`${key}/`)) items[here + id.slice(key.length + 1)] = { ...found, group }
    else items[id] = found
  }
  return { job: whole.job, items }
}

export interface Paragraph {
  pieces: { text: string; strong: boolean }[]
  plain: string
  html: string
  /** Sentences about what could not be written. */
  missing: string[]
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('\n', '<br>')

/** The paragraph as plain text and as HTML with the figures in bold. What a job does not have is left out and told. */
export function paragraphOf(parts: Parts, from: Material): Paragraph {
  const missing: string[] = []
  const pieces = parts.flatMap((part) => {
    if ('text' in part) return [{ text: part.text, strong: false }]
    const written = textOf({ from: 'words', parts: [part] }, from, { kind: 'textarea', options: [] })
    if ('refused' in written) {
      missing.push(written.refused)
      return []
    }
    const strong = from.items[part.item]?.kind === 'quantity' || part.item === `${here}result`
    return [{ text: written.text, strong }]
  })
  const plain = pieces.map(({ text }) => text).join('')
  const html = pieces.map(({ text, strong }) => (strong ? `<b>${escaped(text)}</b>` : escaped(text))).join('')
  return { pieces, plain: plain.trim(), html: `<p>${html.trim()}</p>`, missing }
}
