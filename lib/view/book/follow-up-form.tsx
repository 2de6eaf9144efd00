import { useState } from 'preact/hooks'
import browser from 'webextension-polyfill'
import { addNote } from '../../book/notes.ts'
import { statuses, type FillEntry, type Status } from '../../book/entry-schema.ts'
import { ChoiceField, TextField } from './field.tsx'
import { keepForm, textsOver } from './form-draft.ts'
import { Said, useSaid } from './said.tsx'
import { statusWords } from './status-words.tsx'
import { say } from '../../words/say.ts'

const blank = { reason: '', confirmation: '', due: '', keepUntil: '', resubmittedAs: '', text: '' }

export const followUpOf = ({ hash }: FillEntry): string => `follow-up of ${hash}`

interface Props {
  entry: FillEntry
  /** What was typed before and is not added yet. */
  begun: object | undefined
  onDone: (said: string) => void
  onLeave: () => void
}

/** What became of a submission: a new entry about the old one. */
export function FollowUpForm({ entry, begun, onDone, onLeave }: Props) {
  const [all, setAll] = useState(() => textsOver({ ...blank, status: 'submitted' as string }, begun))
  const { status: chosen, ...typed } = all
  const status: Status = statuses.find((one) => one === chosen) ?? 'submitted'
  const type = (patch: Partial<typeof all>) => {
    const now = { ...all, ...patch }
    setAll(now)
    keepForm(followUpOf(entry), now)
  }
  const { said, once } = useSaid()
  const field = (name: keyof typeof blank) => ({
    value: typed[name],
    onInput: (value: string) => type({ [name]: value }),
  })

  const add = () =>
    once(
      async () => {
        const { resubmittedAs, ...rest } = typed
        const as = resubmittedAs.trim()
        if (status === 'rejected' && !rest.reason.trim()) throw new Error(say`type the reason that the office gave.`)
        if (status === 'resubmitted' && !/^[1-9]\d*$/.test(as))
          throw new Error(say`type the number of the entry that was submitted in its place.`)
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
      () => onDone(say`Entry ${entry.number} is ${status}; the note is a new entry.`),
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
          label={say`What became of it`}
          value={status}
          options={statuses.map((one) => [one, statusWords[one]] as const)}
          onPick={(picked) => type({ status: picked })}
        />
        <TextField label={say`Confirmation number`} {...field('confirmation')} />
        {status === 'rejected' && <TextField label={say`Reason of the rejection`} wide {...field('reason')} />}
        {status === 'resubmitted' && (
          <TextField label={say`Resubmitted as entry`} mode="numeric" {...field('resubmittedAs')} />
        )}
        <TextField label={say`Due on`} type="date" {...field('due')} />
        <TextField label={say`Keep the record until`} type="date" {...field('keepUntil')} />
        <TextField label={say`Note`} wide {...field('text')} />
      </div>
      <div class="acts">
        <button type="submit" class="b low first">
          {say`Add to the book`}
        </button>
        <button type="button" class="b low bare" onClick={onLeave}>
          {say`Leave it`}
        </button>
      </div>
      <Said said={said} />
    </form>
  )
}
