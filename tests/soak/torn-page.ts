/** Saves without a pause, and tells what is there, inside a page of the extension. */
import { entriesForwards, entryOfFill, verify } from '../../lib/book/entries.ts'
import { BookError } from '../../lib/book/error.ts'
import { addFillLine, closeUnended, endFill, startFill } from '../../lib/book/fills.ts'
import { getJob, saveJob } from '../../lib/book/jobs.ts'
import { found, read, type Found } from '../../lib/book/journal/told.ts'
import { fakeFill, fakeJob, fakeLine } from '../book/fake.ts'

type Tell = (kind: 'entry' | 'fill' | 'job', what: string) => void

/** What was answered since `heard` was asked last, where the browser gives a page no way to tell it. */
const answers: Parameters<Tell>[] = []

let failed: unknown

/** @throws what ended the saving, if anything did */
export function heard(): Parameters<Tell>[] {
  if (failed !== undefined) throw failed
  return answers.splice(0)
}

/** Types into a job and fills forms until the page is gone; tells what was answered. */
export const save = (first: number): Promise<void> =>
  saveOn(first).catch((error: unknown) => {
    failed = error
    throw error
  })

async function saveOn(first: number): Promise<void> {
  const { answered = (...what) => void answers.push(what) } = globalThis as unknown as { answered?: Tell }
  for (let at = first; ; at++) {
    for (let key = 0; key < 3; key++) {
      const kept = await saveJob(fakeJob({ id: 'typed', building: { ...fakeJob().building, volume: `${at}.${key}` } }))
      answered('job', kept.updated)
    }
    const id = `fill-${at}`
    await startFill(fakeFill(id), { engine: '0.1.0' })
    answered('fill', id)
    try {
      for (const binding of ['volume', 'flow', 'report']) await addFillLine(id, fakeLine(binding))
      answered('entry', (await endFill(id)).hash)
    } catch (error) {
      // The page ends fills that nobody is heard of any more: then this one has its entry.
      if (!(error instanceof BookError) || !(await entryOfFill(id))) throw error
    }
  }
}

export interface Seen {
  fits: boolean
  /** Of each entry, its hash and the fill it came of. */
  hashes: string[]
  fills: string[]
  /** When the job was last typed in, as kept. */
  typed: string
  told: Found | undefined
}

/** What the book holds after a start, and what was told of it; that is put away then. */
export async function look(): Promise<Seen> {
  await closeUnended()
  const verdict = await verify()
  const entries = await Array.fromAsync(entriesForwards())
  const told = await found()
  await read()
  return {
    fits: verdict.ok,
    hashes: entries.map(({ hash }) => hash),
    fills: entries.map(({ id }) => id),
    typed: (await getJob('typed'))?.updated ?? '',
    told,
  }
}
