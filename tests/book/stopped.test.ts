/** Taking in and writing out a long book: told from the beginning, stopped at any moment, taken up again. */
import { ownStorage } from './own-storage.ts'
import { beforeEach, expect, test } from 'vitest'
import { addSealed, countEntries, verify } from '../../lib/book/entries.ts'
import { applyImport, planImport } from '../../lib/book/import.ts'
import { closeJournal } from '../../lib/book/journal/place.ts'
import { openBookFile, wholeBook } from '../../lib/book/json.ts'
import { subscribe } from '../../lib/book/notice.ts'
import { listRows } from '../../lib/book/search.ts'
import { stoppable, until } from '../../lib/book/stoppable.ts'
import { manyEntries } from './many.ts'
import { reopen } from './fresh.ts'
import { IDBFactory } from 'fake-indexeddb'

const size = 2100

beforeEach(ownStorage.clear)

test('a book that is taken in is told and stopped between batches, and the rest is added later', async () => {
  for await (const batch of manyEntries(size, 1)) await addSealed(batch)
  const told: number[] = []
  const parts = await Array.fromAsync(wholeBook((entries, of) => void told.push(entries, of)))
  expect(told.slice(0, 2)).toEqual([0, size])
  expect(told.length).toBeGreaterThan(100)
  expect(told.slice(-2)).toEqual([size, size])

  await closeJournal()
  await reopen()
  // Another browser.
  globalThis.indexedDB = new IDBFactory()
  ownStorage.clear()
  const source = await openBookFile(new Blob(parts))
  const plan = await planImport(source)
  const stop = new AbortController()
  const added: number[] = []
  let announced = 0
  const end = subscribe(({ what }) => void (announced += what === 'entries' ? 1 : 0))
  const stopAtFirst = (entries: number) => {
    added.push(entries)
    stop.abort()
  }
  await expect(applyImport(plan, stoppable(source, stop.signal), 'x', stopAtFirst)).rejects.toThrow(/abort/i)
  end()
  // What was being written is in, whole, and found; pages are told once.
  expect(await countEntries()).toBe(added.at(-1))
  expect(added.at(-1)).toBeLessThan(size)
  expect(announced).toBe(1)
  expect(await verify()).toMatchObject({ ok: true, count: added.at(-1) })
  expect(await listRows({ text: 'apply/1/part-c' })).toHaveLength(1)

  const again = await planImport(source)
  expect(again.entries).toMatchObject({ add: size - added.at(-1)!, same: added.at(-1) })
  await applyImport(again, source, 'x')
  expect(await verify()).toMatchObject({ ok: true, count: size })
  expect(await listRows({ text: `apply/${size}/part-c` })).toHaveLength(1)
  expect(await listRows({ text: 'apply/1023/part-c' })).toHaveLength(1)
  expect(await listRows({ text: 'apply/1024/part-c' })).toHaveLength(1)
})

test('a plan that is stopped ends at once and has changed nothing', async () => {
  for await (const batch of manyEntries(300, 1)) await addSealed(batch)
  const source = await openBookFile(new Blob(await Array.fromAsync(wholeBook())))
  const stop = new AbortController()
  const reading = planImport(stoppable(source, stop.signal), () => stop.abort())
  await expect(reading).rejects.toThrow(/abort/i)
  expect(await countEntries()).toBe(300)
})

test('writing that is stopped ends at once', async () => {
  for await (const batch of manyEntries(300, 1)) await addSealed(batch)
  const stop = new AbortController()
  const parts = until(
    wholeBook((entries) => void (entries > 0 && stop.abort())),
    stop.signal,
  )
  await expect(Array.fromAsync(parts)).rejects.toThrow(/abort/i)
})
