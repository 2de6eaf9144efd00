/** The second copy of many entries at once: in a flat file of their own, which nobody adds to any more. */
import type { Entry } from '../schema.ts'
import { folder, putLines } from './files.ts'
import { toLine } from './line.ts'
import { alone } from './run.ts'

/** Copies entries that the database has. Never throws: who compares the copies next writes what is missing. */
export async function copyToFile(entries: readonly Entry[]): Promise<void> {
  try {
    const dir = await folder()
    if (!dir) return
    const lines = entries.map((entry) => ({ number: entry.number, line: toLine(entry) }))
    // Files are numbered: one page or worker at a time.
    await alone('second copy', () => putLines(dir, [lines], []))
  } catch (error) {
    console.error('The second copy was not written; the next comparison does it.', error)
  }
}
