/** Whether the entries of the database are those that the second copy has. */
import type { IDBPDatabase } from 'idb'
import type { BookSchema, Head } from '../database.ts'
import { alone } from './run.ts'
import { entriesIn, withSources } from './sources.ts'

/**
 * The first entry that is another than the one kept apart under its number; undefined: none is.
 * @param apart the newest entry as the extension's own storage has it
 * @param thorough whether all of the second copy is read; otherwise only `apart` is compared
 */
export async function writtenAnew(
  db: IDBPDatabase<BookSchema>,
  apart: Head | undefined,
  thorough: boolean,
): Promise<number | undefined> {
  const here = apart && (await db.get('entries', apart.number))
  const newest = here && here.hash !== apart.hash ? apart.number : undefined
  if (!thorough) return newest
  return alone('second copy', () =>
    withSources(async (all) => {
      let first = newest
      // Where the copy has two of a number, one of them is enough.
      const fits = new Set<number>()
      const other = new Set<number>()
      for await (const entries of entriesIn(all, () => true))
        for (const { number, hash } of entries) {
          const kept = await db.get('entries', number)
          if (kept) (kept.hash === hash ? fits : other).add(number)
        }
      for (const number of other) if (!fits.has(number)) first = Math.min(first ?? number, number)
      return first
    }),
  )
}
