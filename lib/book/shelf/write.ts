/** What this book writes to the shelf: the entries that are not there yet, in segments. */
import { sizeOf } from '../check.ts'
import { entriesForwards, keptEntry } from '../entries.ts'
import type { ShelfRecord } from '../database.ts'
import { origins } from '../origin.ts'
import type { Entry } from '../schema.ts'
import { longestSegment, readSegmentName, segmentName, writeSegment, type SegmentName } from './segment.ts'
import { say } from '../../words/say.ts'

/** Segments of this book among the names of files on the shelf. */
export async function ownSegments(names: Iterable<string>): Promise<SegmentName[]> {
  const { book } = await origins()
  return [...names].flatMap((name) => {
    const read = readSegmentName(name)
    return read?.book === book ? read : []
  })
}

/** What of this book on the shelf is not what is here, in a sentence; empty where all of it is. */
export async function ownDiffers(names: Iterable<string>): Promise<string> {
  for (const { last, hash } of (await ownSegments(names)).toSorted((a, b) => a.last - b.last)) {
    const here = await keptEntry(last)
    if (!here)
      return say`The shelf holds entries of this book up to ${last}, which are not here: the book was lost or cut at its end. Take in the newest backup before you write to the shelf.`
    if (!here.hash.startsWith(hash))
      return say`Entry ${last} of this book on the shelf is not the one that is here: the book was rewritten, or begun anew. Nothing more is written to the shelf. Ask whoever keeps the shelf what they hold.`
  }
  return ''
}

/** A file for the shelf. */
export interface ShelfPart {
  name: string
  /** Folder of the book on the shelf. */
  book: string
  entries: number
  parts: () => AsyncGenerator<string>
}

/** A part ends before the attachments and records in it are longer than so many bytes; one entry is never parted. */
const longestPart = 50_000_000

/** The numbers that no segment covers, in ranges; the last one has no end. */
function uncovered(segments: readonly SegmentName[]): { from: number; to: number }[] {
  const gaps: { from: number; to: number }[] = []
  let next = 1
  for (const { first, last } of segments.toSorted((a, b) => a.first - b.first)) {
    if (first > next) gaps.push({ from: next, to: first - 1 })
    next = Math.max(next, last + 1)
  }
  return [...gaps, { from: next, to: Infinity }]
}

/**
 * The segments that are not on the shelf yet: after the newest that is there, and wherever one is gone or never came.
 * @param names the files that are there and are not empty
 */
export async function* missingSegments(names: Iterable<string>, record: ShelfRecord): AsyncGenerator<ShelfPart> {
  const { book } = await origins()
  const part = (entries: Entry[]): ShelfPart => {
    const [first, last] = [entries[0]!, entries.at(-1)!]
    return {
      name: segmentName({ book, first: first.number, last: last.number, hash: last.hash }),
      book,
      entries: entries.length,
      parts: () => writeSegment({ book, name: record.shelf, keys: record.keys }, entries),
    }
  }
  for (const { from, to } of uncovered(await ownSegments(names))) {
    let some: Entry[] = []
    let held = 0
    for await (const entry of entriesForwards(from - 1)) {
      if (entry.number > to) break
      const size = sizeOf(entry) + (entry.kind === 'attachment' ? entry.file.size : 0)
      if (some.length === longestSegment || (some.length > 0 && held + size > longestPart)) {
        yield part(some)
        some = []
        held = 0
      }
      some.push(entry)
      held += size
    }
    if (some.length > 0) yield part(some)
  }
}
