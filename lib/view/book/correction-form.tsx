import { useState } from 'preact/hooks'
import browser from 'webextension-polyfill'
import { addNote } from '../../book/notes.ts'
import type { Entry } from '../../book/schema.ts'
import { TextField } from './field.tsx'
import { keepForm, textsOver } from './form-draft.ts'
import { Said, useSaid } from './said.tsx'
import { say } from '../../words/say.ts'

const blank = { reason: '', text: '' }

export const correctionOf = ({ hash }: Entry): string => `correction of ${hash}`

interface Props {
  entry: Entry
  /** What was typed before and is not added yet. */
  begun: object | undefined
  onDone: (said: string) => void
  onLeave: () => void
}

/** Says what is wrong in an entry, why, and what is right; the old entry stays. */
export function CorrectionForm({ entry, begun, onDone, onLeave }: Props) {
  const [typed, setTyped] = useState(() => textsOver(blank, begun))
  const { reason, text } = typed
  const type = (patch: Partial<typeof blank>) => {
    const now = { ...typed, ...patch }
    setTyped(now)
    keepForm(correctionOf(entry), now)
  }
  const { said, once } = useSaid()

  const add = () =>
    once(
      async () => {
        if (!reason.trim()) throw new Error(say`type the reason first.`)
        await addNote(
          { kind: 'correction', job: entry.job, of: entry.number, reason, text },
          browser.runtime.getManifest().version,
        )
      },
      () => onDone(say`Entry ${entry.number} stands as it was; its correction is a new entry.`),
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
        <TextField
          label={say`What is wrong, and why`}
          wide
          value={reason}
          onInput={(words) => type({ reason: words })}
        />
        <TextField label={say`What is right`} wide value={text} onInput={(words) => type({ text: words })} />
      </div>
      <div class="acts">
        <button type="submit" class="b low first">
          {say`Add the correction`}
        </button>
        <button type="button" class="b low bare" onClick={onLeave}>
          {say`Leave it`}
        </button>
      </div>
      <Said said={said} />
    </form>
  )
}
