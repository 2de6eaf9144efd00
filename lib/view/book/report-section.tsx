import { attach } from '../../book/attachments.ts'
import { listDevices } from '../../book/devices.ts'
import { getEntry } from '../../book/entries.ts'
import { getJob } from '../../book/jobs.ts'
import { nameOfBook } from '../../book/others.ts'
import { isFill } from '../../book/rows.ts'
import type { FillEntry } from '../../book/schema.ts'
import { ENGINE_VERSION } from '../../engine/version.ts'
import type { Device, Job, Test } from '../../job/schema.ts'
import { testName } from '../../job/test-name.ts'
import { jobTitle } from '../../job/job-title.ts'
import { anchorOf, newestFill } from '../../report/anchor.ts'
import { reportOf, type Content } from '../../report/content.ts'
import { heldContent, sinceThen } from '../../report/held.ts'
import { Report } from '../report/report.tsx'
import '../plot/plot.css'
import '../report/report.css'
import { downloadBlob } from '../parts/download-blob.ts'
import { Empty, Trouble } from './field.tsx'
import { fileName } from './file-name.ts'
import { hashOf, type Route } from './route.ts'
import { Said, useSaid } from './said.tsx'
import { useLive } from '../parts/use-live.ts'
import { say } from '../../words/say.ts'

interface Found {
  job: Job
  devices: Device[]
  entry: FillEntry | undefined
  /** Whether the report of that entry is asked for, rather than one of the job as it stands. */
  held: boolean
}

/** The job of a report: as an entry holds it when one is named, else as it stands, with the newest entry about it. */
async function find({ job: id = '', of, book }: Route): Promise<Found | null> {
  const devices = await listDevices()
  if (of !== undefined) {
    const entry = await getEntry(of, book)
    if (!entry || !isFill(entry) || !entry.readings) return null
    return { job: entry.readings, devices, entry, held: true }
  }
  const job = await getJob(id)
  if (!job) return null
  return { job, devices, entry: await newestFill(id), held: false }
}

/** The report of a test: to look at, print, save and attach. */
export function ReportSection({ route }: { route: Route }) {
  const found = useLive(() => find(route), ['jobs', 'devices', 'entries'], JSON.stringify(route))
  if (found.trouble) return <Trouble text={found.trouble} />
  if (found.value === undefined) return <p class="q">{say`reading the job`}</p>
  const { job, devices, entry, held } = found.value ?? {}
  const test = job?.tests.find(({ id }) => id === route.test) ?? job?.tests.at(-1)
  if (!job || !test || !devices) {
    return (
      <Empty title={say`No such test`}>
        <p>{say`The job or entry that this address names holds no test, or is not in this book. Choose one under Jobs.`}</p>
        <a class="b first" href={hashOf({ section: 'jobs' })}>
          {say`Jobs`}
        </a>
      </Empty>
    )
  }
  const sealed = entry && held ? heldContent(entry, test.id) : undefined
  const content = sealed ?? reportOf(job, test, devices, anchorOf(entry, job, test, devices))
  return (
    <>
      {entry && held && (
        <Since entry={entry} book={route.book ?? ''} told={sealed ? sinceThen(entry, test.id, devices) : undefined} />
      )}
      <Bar route={route} job={job} test={test} content={content} entry={entry} />
      <Report content={content} />
    </>
  )
}

/** What a reader must know of a report that an entry holds. `told`: nothing when the entry holds none. */
function Since({ entry, book, told }: { entry: FillEntry; book: string; told: string[] | undefined }) {
  const other = useLive(() => nameOfBook(book), ['entries'], book)
  const head = say`This is the report that entry ${entry.number} holds, made by version ${entry.basis?.engine ?? entry.engine}. It never changes.`
  return (
    <aside class="since" aria-label={say`What has changed since this entry`}>
      {other.value && <p>{say`Entry ${entry.number} stands in ${other.value}, a book that is kept beside yours.`}</p>}
      {told ? (
        <>
          <p>{head}</p>
          {told.map((line) => (
            <p key={line} class="st doubt">
              {line}
            </p>
          ))}
        </>
      ) : (
        <p class="st doubt">
          {say`Entry ${entry.number} holds its readings, but not its device, limit and figures: it is of an earlier version. This report is computed today, with the device and the limit as they stand now.`}
        </p>
      )}
    </aside>
  )
}

interface BarProps extends Omit<Found, 'devices' | 'held'> {
  route: Route
  test: Test
  content: Content
}

function Bar({ route, job, test, content, entry }: BarProps) {
  const { said, tell, run, once } = useSaid()
  const name = fileName(`${jobTitle(job)} ${testName(job.tests, test)}`, 'pdf')
  const make = async () => {
    const { paperOf, pdfOf } = await import('../../report/pdf.ts')
    const { bytes, lost } = await pdfOf([content], paperOf(test))
    const blob = new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/pdf' })
    const without =
      lost.length > 0
        ? ` ${say`The letters ${lost.slice(0, 10).join(' ')} are not in its fonts; Print keeps them.`}`
        : ''
    return { blob, without }
  }
  const save = async () => {
    const { blob, without } = await make()
    downloadBlob(name, blob)
    tell(say`${name} was saved.` + without)
  }
  const keep = async () => {
    const { blob, without } = await make()
    await attach(
      new File([blob], name, { type: blob.type }),
      {
        job: { id: job.id, name: jobTitle(job) },
        text: say`Report of test ${content.role}`,
        ...(entry && !route.book && { of: entry.number }),
      },
      ENGINE_VERSION,
    )
    tell(
      (entry && !route.book
        ? say`${name} was attached to entry ${entry.number}.`
        : say`${name} was attached to the job.`) + without,
    )
  }
  return (
    <div class="report-bar">
      <div class="acts">
        <button type="button" class="b low first" onClick={() => print()}>
          {say`Print`}
        </button>
        <button type="button" class="b low" onClick={() => run(save)}>
          {say`Save PDF`}
        </button>
        <button type="button" class="b low" onClick={() => once(keep)}>
          {say`Attach PDF to the book`}
        </button>
        {job.tests.length > 1 && (
          <nav aria-label={say`Tests of the job`}>
            {job.tests.map((one) => (
              <a
                key={one.id}
                href={hashOf({ ...route, test: one.id })}
                {...(one.id === test.id && { 'aria-current': 'page' as const })}
              >
                {testName(job.tests, one)}
              </a>
            ))}
          </nav>
        )}
      </div>
      <Said said={said} />
    </div>
  )
}
