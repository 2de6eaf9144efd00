import { jobSchema, type Job } from '../job/schema.ts'
import { check } from './check.ts'
import { database } from './database.ts'
import { copy } from './journal/copies.ts'
import { announce } from './notice.ts'
import { allSound, asideOf, sound } from './sound.ts'
import { buried, bury, unbury } from './tombstones.ts'
import { say } from '../words/say.ts'

/** Jobs that are not deleted, the one typed in last first. */
export async function listJobs(): Promise<Job[]> {
  const [jobs, gone] = await Promise.all([allJobs(), buried('job')])
  return jobs.filter(({ id }) => !gone.has(id))
}

/** Deleted jobs with the time of deletion, the latest first. */
export async function listDeletedJobs(): Promise<{ job: Job; at: string }[]> {
  const [jobs, gone] = await Promise.all([allJobs(), buried('job')])
  return jobs
    .flatMap((job) => {
      const at = gone.get(job.id)
      return at === undefined ? [] : [{ job, at }]
    })
    .toSorted((a, b) => b.at.localeCompare(a.at))
}

async function allJobs(): Promise<Job[]> {
  return allSound(jobSchema, await (await database()).getAllFromIndex('jobs', 'updated')).toReversed()
}

/** A job by its id, deleted or not. */
export async function getJob(id: string): Promise<Job | undefined> {
  return sound(jobSchema, await (await database()).get('jobs', id))
}

/**
 * Keeps a job as it stands and stamps `updated`. Called at each keystroke: one relaxed transaction, committed at once
 * so that it survives a popup that closes. IndexedDB runs transactions of one table in the order in which they were
 * made, so a later call wins.
 * @throws BookError when the job does not fit its schema.
 */
export async function saveJob(job: Job): Promise<Job> {
  const kept = check(jobSchema, { ...job, updated: new Date().toISOString() }, say`The job`)
  const tx = (await database()).transaction('jobs', 'readwrite', { durability: 'relaxed' })
  const put = tx.store.put(kept)
  tx.commit()
  await Promise.all([put, tx.done, copy('jobs', kept.id, kept)])
  announce({ what: 'jobs', id: kept.id })
  return kept
}

/**
 * Keeps a job as {@link saveJob} does, unless another view has kept a version of it since the one stamped `since`: then
 * that version is given back and nothing is written.
 * @throws BookError when the job does not fit its schema.
 */
export async function saveJobSince(job: Job, since: string): Promise<{ kept: Job } | { other: Job }> {
  const tx = (await database()).transaction('jobs', 'readwrite', { durability: 'relaxed' })
  const stored = await tx.store.get(job.id)
  const other = sound(jobSchema, stored)
  if (other && other.updated !== since) return { other }
  if (!other && stored) void tx.store.put(asideOf(stored, since))
  // Two versions kept within a millisecond still bear two stamps.
  const now = new Date(Math.max(Date.now(), Date.parse(since) + 1 || 0)).toISOString()
  const kept = check(jobSchema, { ...job, updated: now }, say`The job`)
  const put = tx.store.put(kept)
  tx.commit()
  await Promise.all([put, tx.done, copy('jobs', kept.id, kept)])
  announce({ what: 'jobs', id: kept.id })
  return { kept }
}

/** Hides a job; `restoreJob` brings it back. */
export async function deleteJob(id: string): Promise<void> {
  await bury('job', id)
  announce({ what: 'jobs', id })
}

export async function restoreJob(id: string): Promise<void> {
  await unbury('job', id)
  announce({ what: 'jobs', id })
}
