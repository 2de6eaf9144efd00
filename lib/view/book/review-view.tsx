import { useState } from 'preact/hooks'
import browser from 'webextension-polyfill'
import type { OpenReview } from '../../book/database.ts'
import { addNote } from '../../book/notes.ts'
import { checkReview, type ReviewResult } from '../../book/review.ts'
import { readReview, withNotes, type ReviewFile } from '../../book/review-file.ts'
import type { ReviewNotes } from '../../book/review-schema.ts'
import { getReview, saveReviewNotes } from '../../book/reviews.ts'
import { getJob } from '../../book/jobs.ts'
import type { Finding } from '../../book/schema.ts'
import { jobTitle } from '../../job/job-title.ts'
import { asRead } from '../../results/in-locale.ts'
import { download, jsonType } from './download.ts'
import { Trouble } from './field.tsx'
import { fileName } from './file-name.ts'
import { ReviewFigures } from './review-figures.tsx'
import { ReviewFindings } from './review-findings.tsx'
import { ReviewProof } from './review-proof.tsx'
import { Said, useSaid } from './said.tsx'
import { useLive } from '../parts/use-live.ts'
import { count } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

interface Loaded {
  review: OpenReview
  file: ReviewFile
  result: ReviewResult
  /** Whether the job is of this book. */
  own: boolean
}

async function load(id: string): Promise<Loaded> {
  const review = await getReview(id)
  if (!review) throw new Error(say`The review file was put away. Open it again.`)
  const file = await readReview(new Blob([review.file]))
  return { review, file, result: await checkReview(file), own: (await getJob(file.job.id)) !== undefined }
}

/** A review file: what it says, what comes of it here, and what the reviewer notes. */
export function ReviewView({ id, onClose }: { id: string; onClose: () => void }) {
  const loaded = useLive(() => load(id), [], id)
  if (loaded.trouble) return <Trouble text={loaded.trouble} />
  if (!loaded.value) return <p class="q">{say`computing every figure anew`}</p>
  return <Desk loaded={loaded.value} onClose={onClose} />
}

function Desk({ loaded: { review, file, result, own }, onClose }: { loaded: Loaded; onClose: () => void }) {
  const [notes, setNotes] = useState(review.notes)
  const { said, tell, run, once } = useSaid()

  const edit = (patch: Partial<ReviewNotes>) => {
    const next = { ...notes, ...patch }
    setNotes(next)
    saveReviewNotes(review.id, next).catch((error: unknown) => run(() => Promise.reject(error as Error)))
  }
  const take = (finding: Finding) =>
    notes.findings.some(({ about, text }) => about === finding.about && text === finding.text) ||
    edit({ findings: [...notes.findings, finding] })
  const sendBack = () =>
    run(
      async () => {
        if (!notes.reviewer.trim()) throw new Error(say`type your name or office first.`)
        const finished = { ...notes, finished: new Date().toISOString() }
        await saveReviewNotes(review.id, finished)
        await download(
          fileName(`${jobTitle(file.job)} reviewed`, 'json'),
          jsonType,
          withNotes(new Blob([review.file]), finished),
        )
      },
      () => tell(say`The file with your findings was handed to the browser as a download. Send it back.`),
    )
  const keep = () =>
    once(
      () =>
        addNote(
          {
            kind: 'review',
            job: { id: file.job.id, name: jobTitle(file.job) },
            reviewer: notes.reviewer,
            findings: notes.findings,
            text: '',
          },
          browser.runtime.getManifest().version,
        ),
      () => tell(say`The review was added to your book as a new entry.`),
    )

  return (
    <div class="body">
      <Summary file={file} result={result} onTake={take} />
      <ReviewFigures result={result} notes={notes} onEdit={edit} />
      <ReviewProof file={file} result={result} />
      <ReviewFindings notes={notes} result={result} onEdit={edit} />
      <div class="acts">
        <button type="button" class="b first" onClick={sendBack}>
          {say`Save the file to send back`}
        </button>
        {own && notes.reviewer && (
          <button type="button" class="b low" onClick={keep}>
            {say`Add this review to my book`}
          </button>
        )}
        <button type="button" class="b low bare" onClick={onClose}>
          {say`Put it away`}
        </button>
      </div>
      <Said said={said} />
    </div>
  )
}

/** What does not fit, in words; each can be taken among the findings. */
function Told({ told, onTake }: { told: readonly Finding[]; onTake: (finding: Finding) => void }) {
  if (told.length === 0) return <p>{say`Nothing else was found that does not fit.`}</p>
  return (
    <details class="sec" open>
      <summary>
        <h4>{told.length === 1 ? say`1 thing to look at` : say`${told.length} things to look at`}</h4>
      </summary>
      <ul class="plain">
        {told.map((finding) => (
          <li key={`${finding.about} ${finding.text}`}>
            <span>
              <b>{finding.about}</b> {asRead(finding.text)}
            </span>
            <button type="button" class="b low" onClick={() => onTake(finding)}>
              {say`Take it as a finding`}
              <span class="vh">: {finding.about}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  )
}

interface SummaryProps {
  file: ReviewFile
  result: ReviewResult
  onTake: (finding: Finding) => void
}

function Summary({ file, result, onTake }: SummaryProps) {
  const different = result.figures.filter((one) => one.result !== 'reproduced').length
  const texts = result.texts.filter((one) => one.result !== 'reproduced').length
  const broken = result.entries.filter(({ fits }) => !fits).length
  const here = browser.runtime.getManifest().version
  const checks = result.checks.filter(({ same }) => !same).length
  const { ofJob } = file.proof
  return (
    <section>
      <h3>{jobTitle(file.job)}</h3>
      <p>
        {say`${result.figures.length - different} of ${result.figures.length} figures reproduced`}
        {result.texts.length > 0 &&
          say`, ${result.texts.length - texts} of ${result.texts.length} entered texts reproduced`}
        {result.checks.length > 0 &&
          say`, ${result.checks.length - checks} of ${result.checks.length} checks as in the file`}
        {say`, ${result.entries.length - broken} of ${result.entries.length} entries fit the chain.`}{' '}
        {ofJob &&
          say`The sender’s book says that it holds ${ofJob.length} entries of this job; the file holds ${file.entries.length}.`}{' '}
        {file.beside.map(
          ({ name, entries }) =>
            say`Of ${name}, a book that the sender keeps beside, it holds ${count(entries.length, 'entry', 'entries')}. `,
        )}
      </p>
      <p class="q">
        {say`Computed by version ${file.head.engine}; here by version ${here}.`}
        {file.head.book && say` Written from book ${file.head.book.slice(0, 8)}.`}
        {file.head.engine !== here && say` A difference may come of that: ask before you call it a fault.`}
      </p>
      <p>
        {say`Newest fingerprint of the sender’s book: `}
        <code>{result.head ? result.head.slice(0, 16) : say`none`}</code>
        {say`. Compare it with the one printed on the report: only a copy kept elsewhere shows that the chain was not rewritten.`}
      </p>
      <Told told={result.told} onTake={onTake} />
    </section>
  )
}
