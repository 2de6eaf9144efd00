import { useEffect, useRef } from 'preact/hooks'
import { Field } from './field.tsx'
import { roleProblem } from './role.ts'
import { useBench, useDeskContext } from './use-context.ts'
import { roleWords } from '../../words/names.ts'
import { say } from '../../words/say.ts'

/** Renames the open test or deletes it. */
export function TestEditor({ onDelete, onClose }: { onDelete: () => void; onClose: () => void }) {
  const { job } = useDeskContext()
  const { test, editTest } = useBench()
  const form = useRef<HTMLFormElement>(null)
  useEffect(() => form.current?.querySelector('input')?.select(), [])
  return (
    <form
      class="panel"
      ref={form}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        // Else the browser closes the popup.
        event.preventDefault()
        onClose()
      }}
      aria-label={say`Test ${roleWords(test.role)}`}
      onSubmit={(event) => {
        event.preventDefault()
        onClose()
      }}
    >
      <div class="fields">
        <Field
          label={say`Role of this test`}
          wide
          value={test.role}
          problem={roleProblem(job, test.id, test.role, test.sheet) || undefined}
          onInput={(role) => editTest({ role })}
        />
      </div>
      <div class="row">
        <button type="submit" class="b low">
          {say`Done`}
        </button>
        <button type="button" class="b low bare" onClick={onDelete}>
          {say`Delete this test`}
        </button>
      </div>
    </form>
  )
}
