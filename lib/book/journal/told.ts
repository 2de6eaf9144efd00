/** What a comparison of the copies found, kept until the person has read it. */
import { announce } from '../notice.ts'
import type { BesideFound } from './beside.ts'
import { ownStorage } from './copies.ts'

export interface Found {
  /** When it was found, as an ISO time. */
  at: string
  /** Entries that the book held, as its head said, and how many of them were here. */
  held: number
  here: number
  /** Entries that the second copy gave back. */
  entries: number
  /** Jobs, and other records such as devices, form maps, limits and settings, that were given back. */
  jobs: number
  others: number
  /** Attached files that were given back. */
  files: number
  /** Entries that are in neither copy, by number. At most the first hundred. */
  lost: number[]
  /** How many entries are in neither copy. */
  lostCount: number
  /** An entry that is another than the one kept apart: the book was written anew. */
  anew?: number | undefined
  /** Books kept beside that had lost entries. */
  books?: BesideFound[] | undefined
  /** Why the second copy could not be read; empty when it was. */
  trouble: string
}

export const toldName = 'given back'

/** What was found and not yet read by the person. */
export async function found(): Promise<Found | undefined> {
  return (await ownStorage()?.get(toldName))?.[toldName] as Found | undefined
}

/** Puts a finding away: the person has read it. */
export async function read(): Promise<void> {
  await ownStorage()?.remove(toldName)
  announce({ what: 'copies' })
}

/** Keeps a finding beside one that was not read yet. */
export async function tell(now: Found): Promise<void> {
  const before = await found()
  const sum = (name: 'entries' | 'jobs' | 'others' | 'files') => now[name] + (before?.[name] ?? 0)
  const both: Found = {
    ...now,
    held: Math.max(now.held, before?.held ?? 0),
    here: Math.min(now.here, before?.here ?? now.here),
    entries: sum('entries'),
    jobs: sum('jobs'),
    others: sum('others'),
    files: sum('files'),
    anew: now.anew ?? before?.anew,
    books: [...(before?.books ?? []), ...(now.books ?? [])],
  }
  await ownStorage()?.set({ [toldName]: both })
  announce({ what: 'copies' })
}
