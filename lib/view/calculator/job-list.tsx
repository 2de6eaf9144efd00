import { useEffect, useState } from 'preact/hooks'
import { listDeletedJobs, listJobs, restoreJob } from '../../book/jobs.ts'
import { subscribe } from '../../book/notice.ts'
import type { Job } from '../../job/schema.ts'
import { jobTitle } from '../../job/job-title.ts'
import { toldApart } from '../../job/told-apart.ts'
import { say } from '../../words/say.ts'

interface Props {
  /** The id of the job in hand, or empty. */
  current: string
  onOpen: (job: Job) => void
}

const most = 50
const day = (iso: string): string => iso.slice(0, 10)

/** The jobs of the book, the one typed in last first, and those that were deleted. */
export function JobList({ current, onOpen }: Props) {
  const [jobs, setJobs] = useState<Job[]>()
  const [gone, setGone] = useState<{ job: Job; at: string }[]>([])
  const [wanted, setWanted] = useState('')

  useEffect(() => {
    const leaving = new AbortController()
    const load = async () => {
      const [kept, deleted] = await Promise.all([listJobs(), listDeletedJobs()])
      if (leaving.signal.aborted) return
      setJobs(kept)
      setGone(deleted)
    }
    void load()
    subscribe((notice) => void (notice.what === 'jobs' && load()), leaving.signal)
    return () => leaving.abort()
  }, [])

  if (!jobs) return null
  const apart = toldApart(jobs)
  const words = wanted.toLowerCase().split(/\s+/)
  const fits = jobs.filter((job) => {
    const text = `${jobTitle(job)} ${job.building.program} ${job.building.permit}`.toLowerCase()
    return words.every((word) => text.includes(word))
  })
  return (
    <div class="jobs">
      {jobs.length > 8 && (
        <label class="which">
          {say`Find a job`}
          <input
            class="in words"
            type="search"
            value={wanted}
            onInput={(event) => setWanted(event.currentTarget.value)}
          />
        </label>
      )}
      <ul>
        {fits.slice(0, most).map((job) => (
          <li key={job.id}>
            <button type="button" aria-current={job.id === current ? 'true' : undefined} onClick={() => onOpen(job)}>
              <span>{jobTitle(job)}</span>
              <span class="q">
                {[job.building.program, apart.get(job.id) ?? day(job.updated)].filter(Boolean).join(', ')}
              </span>
            </button>
          </li>
        ))}
      </ul>
      {fits.length > most && (
        <p class="q">{say`${fits.length - most} more: type a part of the address to find them.`}</p>
      )}
      {fits.length === 0 && <p class="q">{jobs.length === 0 ? say`No jobs yet.` : say`No job fits.`}</p>}
      {gone.length > 0 && (
        <details>
          <summary class="link">{say`Deleted jobs (${gone.length})`}</summary>
          <ul>
            {gone.slice(0, most).map(({ job, at }) => (
              <li key={job.id}>
                <button type="button" onClick={() => void restoreJob(job.id)}>
                  <span>{say`Put back ${jobTitle(job)}`}</span>
                  <span class="q">{say`deleted ${day(at)}`}</span>
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}
