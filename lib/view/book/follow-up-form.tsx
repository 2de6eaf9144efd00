import { useState } from 'preact/hooks'
import browser from 'webextension-polyfill'
import { addNote } from '../../book/notes.ts'
import { statuses, type FillEntry, type Status } from '../../book/entry-schema.ts'
import { ChoiceField, TextField } from './field.tsx'
import { Said, useSaid } from './said.tsx'
import { statusWords } from './status-words.tsx'

const blank = { reason: '', confirmation: '', due: '', keepUntil: '', resubmittedAs: '', text: '' }

interface Props {
  entry: FillEntry
  onDone: (said: string) => void
  onLeave: () => void
}

/** What became of a submission: a new entry about the old one. */
export function FollowUpForm({ entry, onDone, onLeave }: Props) {
  const [status, setStatus] = useState<Status>('submitted')
  const [typed, setTyped] = useState(blank)
  const { said, run } = useSaid()
  const field = (name: keyof typeof blank) => ({
    value: typed[name],
    onInput: (value: string) => setTyped({ ...typed, [name]: value }),
  })

  const add = () =>
    run(
      async () => {
        const { resubmittedAs, ...rest } = typed
        const as = resubmittedAs.trim()
        if (status === 'rejected' && !rest.reason.trim()) throw new Error('type the reason that the office gave.')
        if (status === 'resubmitted' && !/^[1-9]\d*$/.test(as))
          throw new Error('type the number of the entry that was submitted in its place.')
        await addNote(
          {
            kind: 'follow-up',
            job: entry.job,
            of: entry.number,
            status,
            ...rest,
            ...(status === 'resubmitted' && { resubmittedAs: Number(as) }),
          },
          browser.runtime.getManifest().version,
        )
      },
      () => onDone(`Entry ${entry.number} is ${status}; the note is a new entry.`),
    )

  return (
    <form
      class="sheet"
      onSubmit={(event) => {
        event.preventDefault()
        add()
      }}
    >
      <div class="fields">
        <ChoiceField
          label="What became of it"
          value={status}
          options={statuses.map((one) => [one, statusWords[one]] as const)}
          onPick={setStatus}
        />
        <TextField label="Confirmation number" {...field('confirmation')} />
        {status === 'rejected' && <TextField label="Reason of the rejection" wide {...field('reason')} />}
        {status === 'resubmitted' && (
          <TextField label="Resubmitted as entry" mode="numeric" {...field('resubmittedAs')} />
        )}
        <TextField label="Due on" type="date" {...field('due')} />
        <TextField label="Keep the record until" type="date" {...field('keepUntil')} />
        <TextField label="Note" wide {...field('text')} />
      </div>
      <div class="acts">
        <button type="submit" class="b low first">
          Add to the book
        </button>
        <button type="button" class="b low bare" onClick={onLeave}>
          Leave it
        </button>
      </div>
      <Said said={said} />
    </form>
  )
}
