/** Adds entries as the background does, inside a page of the extension. */
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import { fakeFill, fakeJob, fakeLine } from '../book/fake.ts'

/** Milliseconds for the entry at the end of a fill, and for one fill from its beginning. */
export async function addOne(lines: number): Promise<{ entry: number; fill: number }> {
  const id = crypto.randomUUID()
  const begun = performance.now()
  await startFill(fakeFill(id), { engine: '0.1.0' })
  for (let line = 0; line < lines; line++) await addFillLine(id, fakeLine(`b${line}`))
  const ending = performance.now()
  await endFill(id)
  const ended = performance.now()
  return { entry: ended - ending, fill: ended - begun }
}

/** Milliseconds for a keystroke in a job. */
export async function typeOne(): Promise<number> {
  const start = performance.now()
  await saveJob(fakeJob({ id: 'typed' }))
  return performance.now() - start
}
