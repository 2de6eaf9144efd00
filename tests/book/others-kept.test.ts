/** Books beside one's own in a backup, and after a loss. */
import { ownStorage } from './own-storage.ts'
import { ownFiles } from './own-files.ts'
import { deleteDB } from 'idb'
import { describe, expect, test } from 'vitest'
import { closeDatabase, databaseBeside } from '../../lib/book/database.ts'
import { countEntries } from '../../lib/book/entries.ts'
import { compareAtStart } from '../../lib/book/journal/compare.ts'
import { closeJournal } from '../../lib/book/journal/place.ts'
import { found } from '../../lib/book/journal/told.ts'
import { fileParts, wholeBook } from '../../lib/book/json.ts'
import { listOthers, renameOther } from '../../lib/book/others.ts'
import { everyBook } from '../../lib/book/rows.ts'
import { listRows } from '../../lib/book/search.ts'
import { verifyBook } from '../../lib/book/verify.ts'
import { foundWords } from '../../lib/view/parts/given-back.tsx'
import { entriesOf, otherMachine, plan, takeIn, text, theirEntries, theirs } from './two-books.ts'

describe('a backup', () => {
  test('holds the books beside, and brings them to another machine with one’s own', async () => {
    await takeIn(theirs, 'van.json')
    await renameOther((await listOthers())[0]!.key, 'Second van')
    const [own, file] = [await entriesOf(), await text(wholeBook())]
    expect(file).toContain('"version":3')
    await otherMachine()
    await takeIn(file, 'backup.json')
    expect(await entriesOf()).toEqual(own)
    const [other] = await listOthers()
    expect(other).toMatchObject({ name: 'Second van', count: 3 })
    expect(await entriesOf(other!.key)).toEqual(theirEntries)
    // Once more changes nothing.
    const again = await plan(file)
    expect(again.others).toMatchObject([{ add: 0, same: 3 }])
  })

  test('whose book beside was cut short is told', async () => {
    await takeIn(theirs, 'van.json')
    const [other] = await listOthers()
    const file = await text(fileParts({ books: [other!] }, [{ entry: theirEntries[0]!, book: other!.key }]))
    await otherMachine()
    expect((await plan(file)).others).toMatchObject([
      { refused: 'The file has 1 entries of this book, and says that there are 3: they are not taken in.' },
    ])
  })

  test('without books beside is of the version that earlier programs read, and says which book it is of', async () => {
    const file = await text(wholeBook())
    const [entry] = await entriesOf()
    expect(JSON.parse(file)[0].head).toMatchObject({ version: 2, book: entry!.book })
  })
})

/** The browser loses databases, as after a torn write, and starts again. */
async function restart(...lost: string[]): Promise<string> {
  await closeJournal()
  await closeDatabase()
  for (const name of lost) await deleteDB(name)
  await compareAtStart()
  const said = await found()
  return said ? foundWords(said).join(' ') : ''
}

describe('after a loss', () => {
  test('of every database the books beside are given back from their copy, and it is told', async () => {
    await takeIn(theirs, 'van.json')
    const [other] = await listOthers()
    const said = await restart('gapsum', databaseBeside(other!.key))
    expect(said).toContain('The book van.json held 3 entries, 0 were here: its copy gave back 3.')
    expect(await listOthers()).toMatchObject([{ key: other!.key, count: 3 }])
    expect(await entriesOf(other!.key)).toEqual(theirEntries)
    expect((await listRows({ book: everyBook, text: 'weir' })).map(({ number }) => number)).toEqual([3, 2, 1])
    expect(await countEntries()).toBe(1)
  })

  test('of the copy too, what is missing is told once, with the file to take in again; that mends it', async () => {
    await takeIn(theirs, 'van.json')
    const [other] = await listOthers()
    ownFiles.clear()
    const said = await restart(databaseBeside(other!.key))
    expect(said).toContain('The book van.json held 3 entries, 0 are here. Take van.json in again')
    ownStorage.remove('given back')
    expect(await restart()).not.toContain('van.json')
    expect((await plan(theirs)).others).toMatchObject([{ add: 3 }])
    await takeIn(theirs, 'van.json')
    expect((await listOthers()).map(({ count }) => count)).toContain(3)
    const whole = (await listOthers()).find(({ count }) => count === 3)
    expect((await verifyBook(true, undefined, whole)).chain).toMatchObject({ ok: true, count: 3 })
  })

  test('of the copy alone it is written again', async () => {
    await takeIn(theirs, 'van.json')
    const [other] = await listOthers()
    ownFiles.clear()
    await restart()
    expect(await restart(databaseBeside(other!.key))).toContain('its copy gave back 3')
  })
})
