import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { emptyTest, nextRole } from '../../job/empty.ts'
import type { Job, Test } from '../../job/schema.ts'
import { Choice } from './choice.tsx'
import { directionFor, roleProblem } from './role.ts'
import { Field } from './field.tsx'
import { say } from '../../words/say.ts'

const subjects = [
  ['enclosure', say`enclosure`],
  ['ducts', say`ducts`],
] as const

interface Asked {
  job: Job
  onAdd: (test: Test) => void
  /** Left out where the job has no other test to go back to. */
  onClose: (() => void) | undefined
}

/** Asks what a new test is about and what it is called. */
export function NewTest({ job, onAdd, onClose }: Asked) {
  const [subject, setSubject] = useState<Test['sheet']['subject']>('enclosure')
  const [role, setRole] = useState<string>()
  const form = useRef<HTMLFormElement>(null)
  // Before the next frame: by then the person may have gone to another cell.
  useLayoutEffect(() => form.current?.querySelector('select')?.focus(), [])
  const named = role ?? nextRole(job, subject)
  const added = (): Test => {
    const test = emptyTest(named.trim(), subject, job.units)
    return { ...test, sheet: { ...test.sheet, direction: directionFor(job, named, test) } }
  }
  const problem = roleProblem(job, '', named, added().sheet)
  return (
    <form
      class="panel"
      ref={form}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !onClose) return
        // Else the browser closes the popup.
        event.preventDefault()
        onClose()
      }}
      aria-label={say`New test`}
      onSubmit={(event) => {
        event.preventDefault()
        if (!problem) onAdd(added())
      }}
    >
      <div class="fields">
        <Choice label={say`Test of`} value={subject} options={subjects} onPick={setSubject} />
        <Field label={say`Role`} value={named} onInput={setRole} problem={problem || undefined} />
      </div>
      <div class="row">
        <button type="submit" class="b low first" disabled={problem !== ''}>
          {say`Add test`}
        </button>
        {onClose && (
          <button type="button" class="b low bare" onClick={onClose}>
            {say`Cancel`}
          </button>
        )}
      </div>
    </form>
  )
}
