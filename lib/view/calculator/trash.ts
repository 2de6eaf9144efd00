/** Deleted tests, so that one can be put back after the window was closed. The newest first, a few at most. */
import * as z from 'zod/mini'
import { testSchema, type Job, type Test } from '../../job/schema.ts'

const binSchema = z.array(z.object({ job: z.string(), place: z.number(), test: testSchema }))
export type Deleted = z.infer<typeof binSchema>[number]

const key = 'gapsum-deleted-tests'
const most = 5

export function readTrash(box: Pick<Storage, 'getItem'>): Deleted[] {
  try {
    const found = binSchema.safeParse(JSON.parse(box.getItem(key) ?? '[]'))
    return found.success ? found.data : []
  } catch {
    return []
  }
}

/** @throws DOMException when there is no room. */
export function putInTrash(box: Pick<Storage, 'getItem' | 'setItem'>, deleted: Deleted): void {
  const others = readTrash(box).filter(({ test }) => test.id !== deleted.test.id)
  box.setItem(key, JSON.stringify([deleted, ...others].slice(0, most)))
}

export function takeFromTrash(box: Pick<Storage, 'getItem' | 'setItem'>, id: string): void {
  box.setItem(key, JSON.stringify(readTrash(box).filter(({ test }) => test.id !== id)))
}

/** Puts a test back where it stood; under another role when its own was given away meanwhile. */
export function putBack(job: Job, test: Test, place: number): Job {
  if (job.tests.some(({ id }) => id === test.id)) return job
  const taken = new Set(job.tests.map(({ role }) => role.trim().toLowerCase()))
  let { role } = test
  for (let number = 2; taken.has(role.trim().toLowerCase()); number++) role = `${test.role.trim()} ${number}`
  return { ...job, tests: job.tests.toSpliced(Math.min(place, job.tests.length), 0, { ...test, role }) }
}
