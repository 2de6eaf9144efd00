/** Rows as they are read: a damaged one is made again from its entry. */
import { canonical } from './canonical.ts'
import { database } from './database.ts'
import { entrySchema } from './entry-schema.ts'
import { rowSchema } from './row-schema.ts'
import { indexWords } from './indexing.ts'
import { followed, isFill, rowOf, type FillRow, type Row } from './rows.ts'
import { sound } from './sound.ts'

/** The rows in the same order; one whose entry is damaged too is left out. */
export async function soundRows(kept: readonly Row[], book = ''): Promise<Row[]> {
  const rows: Row[] = []
  for (const row of kept) {
    const whole = isSound(row) ? row : await madeAgain((row as Partial<Row>).number, book)
    if (whole) rows.push(whole)
  }
  return rows
}

export const isSound = (row: unknown): boolean => sound(rowSchema, row) !== undefined

/**
 * Makes again the row of an entry that says something else than the entry and what was said of it later, with the words
 * by which it is found.
 * @param followUps numbers of the follow-ups of the entry among those up to `newest`
 * @returns whether the row was another
 */
export async function correctRow(
  number: number,
  followUps: readonly number[],
  newest: number,
  book = '',
): Promise<boolean> {
  // In one transaction: nothing is said of the entry meanwhile.
  const tx = (await database(book)).transaction(['entries', 'rows', 'words'], 'readwrite')
  const [entries, rows] = [tx.objectStore('entries'), tx.objectStore('rows')]
  const [entry, kept, since] = await Promise.all([
    entries.get(number),
    rows.get(number),
    entries.getAll(IDBKeyRange.lowerBound(newest, true)),
  ])
  const notes = [...(await Promise.all(followUps.map((at) => entries.get(at)))), ...since]
  let row = sound(entrySchema, entry) && rowOf(entry!)
  if (row && isFill(row))
    for (const note of notes)
      if (note?.kind === 'follow-up' && note.of === number && sound(entrySchema, note))
        row = followed(row as FillRow, note)
  const other = row !== undefined && canonical(row) !== canonical(kept)
  if (row && other) await Promise.all([rows.put(row), indexWords([row], tx.objectStore('words'))])
  await tx.done
  return other
}

/** Makes a row from its entry and what was said of it later, and keeps it. */
async function madeAgain(number: unknown, book: string): Promise<Row | undefined> {
  if (typeof number !== 'number') return undefined
  // In one transaction: nothing is said of the entry meanwhile.
  const tx = (await database(book)).transaction(['entries', 'rows'], 'readwrite')
  const entries = tx.objectStore('entries')
  const entry = sound(entrySchema, await entries.get(number))
  let row = entry && rowOf(entry)
  if (row && isFill(row)) {
    let cursor = await entries.openCursor(IDBKeyRange.lowerBound(number, true))
    while (cursor) {
      const note = cursor.value
      if (note.kind === 'follow-up' && note.of === number && sound(entrySchema, note)) row = followed(row, note)
      cursor = await cursor.continue()
    }
  }
  if (row) await tx.objectStore('rows').put(row)
  await tx.done
  return row
}
