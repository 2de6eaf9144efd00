import type { ComponentChildren } from 'preact'
import type { Job, Test } from '../../job/schema.ts'
import { isBlank } from '../../job/edits.ts'
import { alike, testName } from '../../job/test-name.ts'
import { say } from '../../words/say.ts'

interface Props {
  job: Job
  open: string
  editing: boolean
  adding: boolean
  onOpen: (id: string) => void
  onEdit: () => void
  onAdd: () => void
  /** Adds a test like the open one: of the house in the other direction, or of its next system of ducts. */
  onLike: () => void
  /** Stands at its end. */
  children?: ComponentChildren
}

/** What a further test with the same set-up would be, once the open one was begun. */
function likeWords(job: Job, test: Test | undefined): { text: string; words: string } | undefined {
  if (!test || test.role.trim() === '' || test.sheet.points.every(isBlank)) return undefined
  if (test.sheet.subject === 'ducts')
    return /^duct system \d/i.test(test.role.trim())
      ? { text: say`+ system`, words: say`Next duct system, same set-up` }
      : undefined
  if (job.tests.some((one) => one.id !== test.id && alike(one, test))) return undefined
  return { text: say`+ direction`, words: say`Other direction, same set-up` }
}

/** The tests of a job. The open one, pressed again, shows its role to rename or delete. */
export function TestRow({ job, open, editing, adding, onOpen, onEdit, onAdd, onLike, children }: Props) {
  const like = likeWords(
    job,
    job.tests.find(({ id }) => id === open),
  )
  return (
    <nav class="tests" aria-label={say`Tests of this job`}>
      {job.tests.map((test) =>
        test.id === open ? (
          <button
            key={test.id}
            type="button"
            aria-current="true"
            aria-expanded={editing}
            title={say`Rename or delete this test`}
            onClick={onEdit}
          >
            {testName(job.tests, test)}
          </button>
        ) : (
          <button key={test.id} type="button" onClick={() => onOpen(test.id)}>
            {testName(job.tests, test)}
          </button>
        ),
      )}
      <button type="button" aria-expanded={adding} aria-label={say`Add a test`} onClick={onAdd}>
        {say`+ test`}
      </button>
      {like && (
        <button type="button" aria-label={like.words} title={like.words} onClick={onLike}>
          {like.text}
        </button>
      )}
      {children}
    </nav>
  )
}
