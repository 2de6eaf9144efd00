/** Two books of two browsers: one's own with an entry, and the file of another with three. */
import { ownStorage } from './own-storage.ts'
import { ownFiles } from './own-files.ts'
import { IDBFactory } from 'fake-indexeddb'
import { afterEach, beforeEach } from 'vitest'
import { seal } from '../../lib/book/chain.ts'
import { entriesForwards } from '../../lib/book/entries.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { applyImport, planImport, usually, type ImportPlan } from '../../lib/book/import.ts'
import { openBookFile, wholeBook } from '../../lib/book/json.ts'
import { closeJournal } from '../../lib/book/journal/place.ts'
import type { Entry } from '../../lib/book/schema.ts'
import { context, fakeFill, fakeLine } from './fake.ts'
import { reopen } from './fresh.ts'

export async function text(parts: AsyncIterable<string>): Promise<string> {
  let whole = ''
  for await (const part of parts) whole += part
  return whole
}

export async function fill(id: string, street = '14 Tannery Row') {
  await startFill(fakeFill(id, { job: { id: `job of ${street}`, name: street } }), context)
  await addFillLine(id, fakeLine('flow'))
  return endFill(id)
}

/** Another browser, with a book of its own. */
export async function otherMachine() {
  await reopen()
  await closeJournal()
  ownStorage.clear()
  ownFiles.clear()
  globalThis.indexedDB = new IDBFactory()
}

const open = (file: string) => openBookFile(new Blob([file]))
export const plan = async (file: string) => planImport(await open(file))

export async function takeIn(
  file: string,
  name = 'theirs.json',
  choose?: (plan: ImportPlan) => ReturnType<typeof usually>,
) {
  const source = await open(file)
  const planned = await planImport(source)
  await applyImport(planned, source, name, undefined, choose?.(planned))
  return planned
}

/** Changes an entry and seals it and all after it anew. */
export async function forged(entries: readonly Entry[], from: number): Promise<Entry[]> {
  const all = entries.slice(0, from - 1)
  for (const entry of entries.slice(from - 1)) {
    const changed = { ...entry, job: { ...entry.job, name: '99 Nowhere' }, previous: all.at(-1)?.hash ?? '' }
    all.push({ ...changed, hash: await seal(changed) } as Entry)
  }
  return all
}

export const entriesOf = (book = '') => Array.fromAsync(entriesForwards(0, book))

/** The file of the other book, its entries, and its file after one entry more; written before each test. */
export let theirs = ''
export let theirEntries: Entry[] = []
export let longer = ''

beforeEach(async () => {
  await closeJournal()
  ownStorage.clear()
  ownFiles.clear()
  for (const id of ['t1', 't2', 't3']) await fill(id, '3 Weir Street')
  theirs = await text(wholeBook())
  theirEntries = await entriesOf()
  await fill('t4', '3 Weir Street')
  longer = await text(wholeBook())
  await otherMachine()
  await fill('mine')
})
afterEach(closeJournal)
