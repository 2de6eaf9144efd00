/** What a plan needs to know of each record of a file, with the seal that each entry should bear. */
import { seal } from './chain.ts'
import type { BookItem } from './json.ts'
import type { Entry, KeptFile } from './schema.ts'

/** Of an entry, what tells its place in a chain; `file`: of one about an attachment. */
export type Outline = Pick<Entry, 'number' | 'hash' | 'previous' | 'at' | 'book' | 'kind'> & { file?: KeptFile }

type Whole = Exclude<BookItem, { kind: 'entry' | 'beside' | 'blob' }>

/** `seal`: what the entry's hash should be; empty where it has none. */
export type Outlined<Seal = string | Promise<string>> =
  | Whole
  | { kind: 'entry'; value: Outline; seal: Seal }
  | { kind: 'beside'; value: { book: string; entry: Outline }; seal: Seal }
  | { kind: 'blob'; value: { sha256: string } }

const sealOf = (entry: Entry): Promise<string> => seal(entry).catch(() => '')

function outlineOf(entry: Entry): Outline {
  const { number, hash, previous, at, book, kind } = entry
  return { number, hash, previous, at, book, kind, ...(entry.kind === 'attachment' && { file: entry.file }) }
}

function outlined(item: BookItem): Outlined<Promise<string>> {
  if (item.kind === 'entry') return { kind: 'entry', value: outlineOf(item.value), seal: sealOf(item.value) }
  if (item.kind === 'beside') {
    const { book, entry } = item.value
    return { kind: 'beside', value: { book, entry: outlineOf(entry) }, seal: sealOf(entry) }
  }
  return item.kind === 'blob' ? { kind: 'blob', value: { sha256: item.value.sha256 } } : item
}

/** The outlines of records, in their order; hashing one does not wait for another. */
export async function* outlinesOf(items: AsyncIterable<BookItem>): AsyncGenerator<Outlined<Promise<string>>> {
  for await (const item of items) yield outlined(item)
}

/** The same with its seal, to be posted. */
export async function withSeal(one: Outlined): Promise<Outlined<string>> {
  return one.kind === 'entry' || one.kind === 'beside' ? { ...one, seal: await one.seal } : one
}
