/** What makes two files the same form: their fields and what they are headed, not their names or what they hold. */
import type { Field } from './fields.ts'
import type { Piece } from './pieces.ts'

/** So many of the first words count: a new edition of a form mostly says so there. */
const heading = 200

/**
 * 16 hexadecimal digits that are the same for every copy of a form, filled or not.
 * @param pages how many there are
 * @param words of the first page; of a form without fields all of them count
 */
export async function formId(pages: number, fields: readonly Field[], words: readonly Piece[]): Promise<string> {
  const said = words.map(({ text }) => text).join(' ')
  const what = [
    pages,
    fields.map(({ name, kind, widgets }) => [name, kind, widgets.length]).toSorted(byName),
    fields.length > 0 ? said.slice(0, heading) : said,
  ]
  const hash = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(JSON.stringify(what)))
  return [...new Uint8Array(hash).slice(0, 8)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

function byName([a]: (string | number)[], [b]: (string | number)[]): number {
  return String(a) < String(b) ? -1 : 1
}
