import { useState } from 'preact/hooks'
import { editions } from '../../job/kept-limit.ts'
import { ChoiceField, TextField } from './field.tsx'
import { say } from '../../words/say.ts'

interface Props {
  onCopy: (edition: string, set: string) => void
  onLeave: () => void
}

/** A set of one's own begun with the limits of a published edition: an older one, or one that a place has changed. */
export function SetForm({ onCopy, onLeave }: Props) {
  const [edition, setEdition] = useState(editions()[0] ?? '')
  const [name, setName] = useState('')
  return (
    <form
      class="sheet"
      onSubmit={(event) => {
        event.preventDefault()
        onCopy(edition, name.trim() || say`${edition}, as enforced here`)
      }}
    >
      <div class="fields">
        <ChoiceField
          label={say`Begin with the limits of`}
          value={edition}
          options={editions().map((one) => [one, one] as const)}
          onPick={setEdition}
        />
        <TextField
          label={say`Name of the set`}
          value={name}
          placeholder={say`${edition}, as enforced here`}
          onInput={setName}
        />
      </div>
      <p class="q">{say`Each limit is copied to your own. Then change what your authority changed, and delete what does not hold.`}</p>
      <div class="acts">
        <button type="submit" class="b low first">
          {say`Copy its limits`}
        </button>
        <button type="button" class="b low bare" onClick={onLeave}>
          {say`Leave it`}
        </button>
      </div>
    </form>
  )
}
