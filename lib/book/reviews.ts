/** Review files that stand open, with what was noted so far: a draft is kept at every keystroke. */
import { check } from './check.ts'
import { database, type OpenReview } from './database.ts'
import { announce } from './notice.ts'
import { usualBands } from './review.ts'
import { readReview } from './review-file.ts'
import { reviewNotesSchema, type ReviewNotes } from './review-schema.ts'
import { say } from '../words/say.ts'

export const emptyNotes = (): ReviewNotes => ({ reviewer: '', ...usualBands, retest: {}, findings: [], finished: '' })

/**
 * Opens a review file and keeps it until it is put away.
 * @throws BookError when it is none, or not as it was written.
 */
export async function openReview(file: Blob & { name: string }): Promise<OpenReview> {
  const { notes } = await readReview(file)
  const review: OpenReview = {
    id: crypto.randomUUID(),
    name: file.name.slice(0, 200),
    opened: new Date().toISOString(),
    file: await file.arrayBuffer(),
    notes: notes ?? emptyNotes(),
  }
  await (await database()).put('reviews', review)
  announce({ what: 'reviews', id: review.id })
  return review
}

/** The files that stand open, the latest first, without what they hold. */
export async function listReviews(): Promise<Pick<OpenReview, 'id' | 'name' | 'opened'>[]> {
  const found: Pick<OpenReview, 'id' | 'name' | 'opened'>[] = []
  let cursor = await (await database()).transaction('reviews').store.openCursor()
  while (cursor) {
    const { id, name, opened } = cursor.value
    found.push({ id, name, opened })
    cursor = await cursor.continue()
  }
  return found.toSorted((a, b) => b.opened.localeCompare(a.opened))
}

export async function getReview(id: string): Promise<OpenReview | undefined> {
  return (await database()).get('reviews', id)
}

/** @throws BookError when the notes do not fit. */
export async function saveReviewNotes(id: string, notes: ReviewNotes): Promise<void> {
  const kept = check(reviewNotesSchema, notes, say`The review`)
  const tx = (await database()).transaction('reviews', 'readwrite')
  const review = await tx.store.get(id)
  if (review) await tx.store.put({ ...review, notes: kept })
  await tx.done
}

/** Takes an open review file off the list; the file it came from is not touched. */
export async function closeReview(id: string): Promise<void> {
  await (await database()).delete('reviews', id)
  announce({ what: 'reviews', id })
}
