/** The book as a file: jobs, devices, form maps with their versions, and entries. */
import * as z from 'zod/mini'
import { formMapSchema } from '../form/schema.ts'
import { deviceSchema, jobSchema } from '../job/schema.ts'
import { check } from './check.ts'
import { database, tombstoneKinds } from './database.ts'
import { entriesForwards } from './entries.ts'
import { BookError } from './error.ts'
import { entrySchema, type Entry } from './entry-schema.ts'

export const bookFileSchema = z.object({
  format: z.literal('gapsum-book'),
  version: z.literal(1),
  exported: z.string(),
  jobs: z.array(jobSchema),
  devices: z.array(deviceSchema),
  maps: z.array(formMapSchema),
  /** What is hidden as deleted. */
  deleted: z.array(z.object({ kind: z.enum(tombstoneKinds), id: z.string(), at: z.string() })),
  entries: z.array(entrySchema),
})

export type BookFile = z.infer<typeof bookFileSchema>
type Part = Partial<Pick<BookFile, 'jobs' | 'devices' | 'maps' | 'deleted'>>

/** Yields a book file piece by piece, so that a long book is never in memory as one text. */
export async function* fileParts(
  part: Part,
  entries: Iterable<Entry> | AsyncIterable<Entry> = [],
): AsyncGenerator<string> {
  const head: Omit<BookFile, 'entries'> = {
    format: 'gapsum-book',
    version: 1,
    exported: new Date().toISOString(),
    jobs: part.jobs ?? [],
    devices: part.devices ?? [],
    maps: part.maps ?? [],
    deleted: part.deleted ?? [],
  }
  yield `${JSON.stringify(head, null, 1).slice(0, -2)},\n "entries": [`
  let separator = '\n'
  for await (const entry of entries) {
    yield separator + JSON.stringify(entry)
    separator = ',\n'
  }
  yield '\n ]\n}\n'
}

/** The whole book, what is deleted too. Settings and the tester's profile stay out. */
export async function* wholeBook(): AsyncGenerator<string> {
  const db = await database()
  const [jobs, devices, maps, deleted] = await Promise.all([
    db.getAll('jobs'),
    db.getAll('devices'),
    db.getAll('maps'),
    db.getAll('tombstones'),
  ])
  yield* fileParts({ jobs, devices, maps, deleted }, entriesForwards())
}

/**
 * Reads a book file.
 * @throws BookError when it is not one.
 */
export function readBookFile(text: string): BookFile {
  let data: unknown
  try {
    data = JSON.parse(text)
  } catch {
    throw new BookError([
      {
        code: 'invalid',
        path: '',
        message: 'This file is not JSON. Choose a file that was exported from the book, unchanged.',
      },
    ])
  }
  return check(bookFileSchema, data, 'The file')
}
