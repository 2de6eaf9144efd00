/** Compares the database, the second copy and the head kept beside both, and completes what is short. */
import type { IDBPDatabase } from 'idb'
import { database, type BookSchema } from '../database.ts'
import { announce } from '../notice.ts'
import { keptHead, headName } from './keep.ts'
import { levelOthers } from './beside.ts'
import { levelBlobs, levelCopies, levelEntries, levelFills } from './give-back.ts'
import { journal } from './place.ts'
import { ownStorage } from './copies.ts'
import { alone, done, noteDone } from './run.ts'
import { putAway, withSources } from './sources.ts'
import { found, tell, type Found } from './told.ts'
import { writtenAnew } from './written-anew.ts'

type Db = IDBPDatabase<BookSchema>

const wording = (error: unknown): string => (error instanceof Error ? error.message : String(error))

/** At most so many numbers of lost entries are named. */
const named = 100

/**
 * Compares everything and gives back what the database lacks. What was given back or is lost is kept for the person to
 * read (`told.ts`). Never throws: what cannot be read is part of the finding.
 */
export const compare = (db: Db): Promise<Found> => alone('second copy', () => comparison(db))

async function comparison(db: Db): Promise<Found> {
  const held = await keptHead()
  const now: Found = {
    at: new Date().toISOString(),
    held: held?.number ?? 0,
    here: 0,
    entries: 0,
    jobs: 0,
    others: 0,
    files: 0,
    lost: [],
    lostCount: 0,
    trouble: '',
  }
  let tail = 0
  try {
    now.anew = await writtenAnew(db, held, false)
    Object.assign(now, await levelCopies(db))
    const { here, newest, given, lost, last } = await withSources(async (all) => {
      const back = await levelEntries(db, all, held ?? { number: 0, hash: '' })
      now.others += await levelFills(db, all)
      now.files = await levelBlobs(db, all)
      return back
    })
    Object.assign(now, { here, held: newest, entries: given, lost: lost.slice(0, named), lostCount: lost.length })
    tail = lost.filter((number) => number > last).length
    const books = await levelOthers(db)
    if (books.length > 0) now.books = books
    // Nobody has them any more: that is told once, and the next entry follows the newest that is here.
    if (newest > 0 && here + given === 0) await ownStorage()?.remove(headName)
  } catch (error) {
    now.trouble = wording(error)
    console.error('The second copy could not be read.', error)
  }
  const given = now.entries + now.jobs + now.others + now.files
  if (given > 0 || tail > 0 || now.books || now.anew !== undefined || (now.trouble && now.held > 0))
    await tell(now).catch(console.error)
  if (given > 0 || now.books)
    for (const what of ['jobs', 'devices', 'maps', 'limits', 'settings', 'entries', 'fills'] as const)
      announce({ what })
  return now
}

/**
 * Fills a database that was made new, before anybody reads it. The mark in it stays until all of it was given back, so
 * that one that is cut off goes on when it is opened next.
 */
export async function restore(db: Db): Promise<void> {
  const { trouble } = await compare(db)
  if (trouble) return
  await db.delete('single', 'restoring')
  await noteDone('compared')
}

/** Compares once in a run of the browser, before anybody reads what may be older than what was typed last. */
export async function compareOnce(db: Db): Promise<void> {
  await alone('second copy', async () => {
    if (await done('compared')) return
    const { trouble } = await comparison(db)
    if (!trouble) await noteDone('compared')
  })
}

const looked = new WeakMap<Db, Promise<void>>()

/**
 * Makes sure, once in a page or worker, that the database ends where the second copy ends: an entry that is added to a
 * shorter one would take the number of one that is only in the copy. To be called before an entry is added.
 */
export async function inStep(): Promise<void> {
  const db = await database()
  let look = looked.get(db)
  if (!look) looked.set(db, (look = quickLook(db)))
  await look
}

async function quickLook(db: Db): Promise<void> {
  try {
    const copy = await journal()
    const [mine, theirs, head, open] = await Promise.all([
      db.transaction('entries').store.openKeyCursor(null, 'prev'),
      copy.transaction('entries').store.openKeyCursor(null, 'prev'),
      keptHead(),
      copy.count('open'),
    ])
    const newest = mine?.primaryKey ?? 0
    if (open > 0 || newest !== (head?.number ?? 0) || newest < (theirs?.primaryKey[0] ?? 0)) await compare(db)
  } catch (error) {
    console.error('The second copy could not be read.', error)
  }
}

/** Compares once in a run of the browser, and puts away what earlier runs wrote. */
export async function compareAtStart(): Promise<void> {
  const db = await database()
  if ((await done('compared')) === undefined) await compare(db)
  else await inStep()
  const said = await found()
  // What could not be read may be all that is left.
  if (said?.trouble) return
  await alone('second copy', async () => {
    if (await done('put away')) return
    await putAway((said?.lostCount ?? 0) > 0)
    await noteDone('put away')
  }).catch((error: unknown) =>
    console.error('The second copy of earlier runs was not put away; the next start does it.', error),
  )
}

/** Makes sure that the second copy has what was just taken in. */
export async function compareNow(): Promise<void> {
  await compare(await database())
}
