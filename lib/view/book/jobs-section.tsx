import { useRef, useState } from 'preact/hooks'
import browser from 'webextension-polyfill'
import { listDevices } from '../../book/devices.ts'
import { countEntries } from '../../book/entries.ts'
import { deleteJob, listDeletedJobs, listJobs, restoreJob } from '../../book/jobs.ts'
import { fileParts } from '../../book/json.ts'
import { reviewParts } from '../../book/review-file.ts'
import type { Job } from '../../job/schema.ts'
import { jobTitle } from '../../job/job-title.ts'
import { toldApart } from '../../job/told-apart.ts'
import { JobFactCells } from './job-fact-cells.tsx'
import { useJobFacts } from './job-facts.ts'
import { DamagedKept } from './damaged-kept.tsx'
import { download, jsonType } from './download.ts'
import { fileName } from './file-name.ts'
import { Empty, TextField, Trouble } from './field.tsx'
import { JobReport } from './job-report.tsx'
import { openCalculator } from '../../extension/open-book.ts'
import { hashOf } from './route.ts'
import { Said, useSaid } from './said.tsx'
import { useLive } from '../parts/use-live.ts'
import { count, day } from '../parts/wording.ts'
import { testName } from '../../job/test-name.ts'
import { say } from '../../words/say.ts'

const page = 100

/** The jobs: open in the calculator, export, delete, put back. */
export function JobsSection() {
  const [text, setText] = useState('')
  const [limit, setLimit] = useState(page)
  const jobs = useLive(listJobs, ['jobs'])
  const deleted = useLive(listDeletedJobs, ['jobs'])
  const { said, tell, run } = useSaid()

  const words = text.toLowerCase().split(/\s+/).filter(Boolean)
  const found = (jobs.value ?? []).filter((job) => {
    const { building, tester } = job
    const searched = [jobTitle(job), building.permit, building.program, tester.name, tester.company]
      .join(' ')
      .toLowerCase()
    return words.every((word) => searched.includes(word))
  })
  const apart = toldApart(jobs.value ?? [])
  const devices = useLive(listDevices, ['devices'])
  const entries = useLive(() => countEntries(), ['entries'])
  const shownJobs = found.slice(0, limit)
  const facts = useJobFacts(shownJobs, devices.value, entries.value)
  // Drawn with what is said of each job: a row that is filled later would move the buttons under a pointer.
  const drawn = useRef(false)
  drawn.current ||= jobs.value !== undefined && (devices.trouble !== '' || shownJobs.every(({ id }) => facts.has(id)))
  const remove = (job: Job) =>
    run(
      () => deleteJob(job.id),
      () => tell(say`${jobTitle(job)} was deleted.`, say`Put it back`, () => restoreJob(job.id)),
    )

  if (!jobs.value || !deleted.value || !drawn.current) return <Trouble text={jobs.trouble || deleted.trouble} />
  return (
    <>
      <Trouble text={jobs.trouble} />
      <DamagedKept store="jobs" />
      {jobs.value.length === 0 ? (
        <Empty title={say`No jobs yet`}>
          <p>
            {say`Open Gapsum from the toolbar and start a job: type the address, the volume and the readings. What you type is kept here at every keystroke.`}
          </p>
          <button type="button" class="b first" onClick={() => run(() => openCalculator(''))}>
            {say`Open the calculator`}
          </button>
        </Empty>
      ) : (
        <>
          <div class="flt">
            <TextField
              label={say`Find`}
              type="search"
              wide
              value={text}
              onInput={setText}
              placeholder={say`address, permit, tester`}
            />
            <button
              type="button"
              class="b"
              onClick={() => run(() => download(fileName('jobs', 'json'), jsonType, fileParts({ jobs: found })))}
            >
              {say`Export `}
              {text ? say`what is found` : say`all jobs`}
            </button>
          </div>
          <div class="scroll">
            <table class="t ls jobs">
              <thead>
                <tr>
                  <th scope="col">{say`Job`}</th>
                  <th scope="col">{say`Permit`}</th>
                  <th scope="col">{say`Tester`}</th>
                  <th scope="col">{say`Tests`}</th>
                  <th scope="col">{say`Figure`}</th>
                  <th scope="col">{say`Verdict`}</th>
                  <th scope="col">{say`Status`}</th>
                  <th scope="col" class="num">
                    {say`Last typed in`}
                  </th>
                  <th scope="col">
                    <span class="vh">{say`Actions`}</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {shownJobs.map((job) => (
                  <tr key={job.id}>
                    <th scope="row">
                      <b>{jobTitle(job)}</b>
                      {apart.has(job.id) && <small class="q"> {apart.get(job.id)}</small>}
                      {job.demo && <small class="q">{say` example, invented`}</small>}
                    </th>
                    <td>{job.building.permit}</td>
                    <td>
                      {job.tester.name} {job.tester.company && <small class="q">{job.tester.company}</small>}
                    </td>
                    <td>
                      {job.tests.map((test) => testName(job.tests, test)).join('; ') || (
                        <span class="q">{say`none yet`}</span>
                      )}
                    </td>
                    <JobFactCells facts={facts.get(job.id)} />
                    <td class="num">{day(job.updated)}</td>
                    <td>
                      <div class="acts">
                        <button type="button" class="b low" onClick={() => run(() => openCalculator(job.id))}>
                          {say`Open`}
                          <span class="vh"> {jobTitle(job)}</span>
                        </button>
                        <a class="b low" href={hashOf({ section: 'entries', job: job.id })}>
                          {say`Entries`}
                          <span class="vh">{say` of ${jobTitle(job)}`}</span>
                        </a>
                        <button
                          type="button"
                          class="b low"
                          onClick={() =>
                            run(() => download(fileName(jobTitle(job), 'json'), jsonType, fileParts({ jobs: [job] })))
                          }
                        >
                          {say`Export`}
                          <span class="vh"> {jobTitle(job)}</span>
                        </button>
                        <button
                          type="button"
                          class="b low"
                          onClick={() =>
                            run(
                              () =>
                                download(
                                  fileName(`${jobTitle(job)} review`, 'json'),
                                  jsonType,
                                  reviewParts(job, browser.runtime.getManifest().version),
                                ),
                              () =>
                                tell(
                                  say`The review file is written. Send it to the reviewer, who opens it under Review in a book of their own.`,
                                ),
                            )
                          }
                        >
                          {say`Review file`}
                          <span class="vh">{say` of ${jobTitle(job)}`}</span>
                        </button>
                        <JobReport job={job} run={run} />
                        <button type="button" class="b low bare" onClick={() => remove(job)}>
                          {say`Delete`}
                          <span class="vh"> {jobTitle(job)}</span>
                        </button>
                      </div>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <div class="foot">
            <span role="status">{say`${Math.min(limit, found.length)} of ${count(found.length, 'job')} shown`}</span>
          </div>
          {found.length > limit && (
            <button type="button" class="b more" onClick={() => setLimit(limit + page)}>
              {say`Show ${page} more`}
            </button>
          )}
        </>
      )}
      {deleted.value.length > 0 && (
        <details class="sec">
          <summary>
            <h2>{say`Deleted`}</h2>{' '}
            <span class="q">{say`${count(deleted.value.length, 'job')}; entries keep their readings`}</span>
          </summary>
          <ul class="plain">
            {deleted.value.map(({ job, at }) => (
              <li key={job.id}>
                <span>
                  {jobTitle(job)} <span class="q">{say`deleted ${day(at)}`}</span>
                </span>
                <button type="button" class="b low" onClick={() => run(() => restoreJob(job.id))}>
                  {say`Put back`}
                  <span class="vh"> {jobTitle(job)}</span>
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
      <Said said={said} foot />
    </>
  )
}
