/** What the measurement of the book runs inside a page of the extension. */
import { addSealed, countEntries, getHead, verify } from '../../lib/book/entries.ts'
import { listRows, type Listing } from '../../lib/book/search.ts'
import { manyEntries } from '../book/many.ts'

/** Lines of a fill: a rebate form with as many controls is common practice, no source. */
const lines = 24

/** Fills the book up to `to` entries; it must hold none or those of an earlier call. */
export async function fillBook(to: number): Promise<number> {
  const start = performance.now()
  for await (const batch of manyEntries(to, lines, await getHead())) await addSealed(batch)
  return performance.now() - start
}

/** Milliseconds of a search, the least of seven, and how many were found. */
export async function search(listing: Listing): Promise<{ ms: number; found: number }> {
  const times: number[] = []
  let found = 0
  for (let round = 0; round < 7; round++) {
    const start = performance.now()
    found = (await listRows(listing)).length
    times.push(performance.now() - start)
  }
  return { ms: Math.min(...times), found }
}

export const entries = countEntries

export async function check(): Promise<{ ms: number; ok: boolean }> {
  const start = performance.now()
  const verdict = await verify()
  return { ms: performance.now() - start, ok: verdict.ok }
}
