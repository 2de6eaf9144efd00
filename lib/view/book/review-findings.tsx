import { findingSchema } from '../../book/entry-schema.ts'
import type { ReviewResult } from '../../book/review.ts'
import type { ReviewNotes } from '../../book/review-schema.ts'
import { wordOf } from '../../reduce/figures/index.ts'
import { Icon } from '../parts/icons.tsx'
import { ChoiceField, TextField } from './field.tsx'
import { roleWords } from '../../words/names.ts'
import { say, shown } from '../../words/say.ts'

interface Props {
  notes: ReviewNotes
  result: ReviewResult
  onEdit: (patch: Partial<ReviewNotes>) => void
}

const weights = findingSchema.shape.weight.options

/** What the reviewer found, kept at every keystroke. */
export function ReviewFindings({ notes, result, onEdit }: Props) {
  // What a finding is about is sent with it, in the words of whoever chose it.
  const about = [
    say`the whole file`,
    ...result.figures.map(({ test, figure, unit }) => `${roleWords(test)}: ${wordOf(figure, unit)}`),
    ...result.entries.map(({ entry }) => say`entry ${entry}`),
  ]
  const set = (at: number, patch: Partial<ReviewNotes['findings'][number]>) =>
    onEdit({ findings: notes.findings.map((one, index) => (index === at ? { ...one, ...patch } : one)) })
  return (
    <section>
      <h3>{say`Findings`}</h3>
      <div class="fields">
        <TextField label={say`Reviewer`} value={notes.reviewer} onInput={(reviewer) => onEdit({ reviewer })} />
      </div>
      {notes.findings.map((finding, at) => (
        // oxlint-disable-next-line react/no-array-index-key -- a finding has no id of its own and keeps its place
        <div key={at} class="fields finding">
          <ChoiceField
            label={say`About`}
            value={finding.about}
            options={(about.includes(finding.about) ? about : [finding.about, ...about]).map(
              (one) => [one, one] as const,
            )}
            onPick={(picked) => set(at, { about: picked })}
          />
          <ChoiceField
            label={say`Weight`}
            value={finding.weight}
            options={weights.map((one) => [one, shown(one)] as const)}
            onPick={(weight) => set(at, { weight })}
          />
          <TextField label={say`Finding ${at + 1}`} wide value={finding.text} onInput={(text) => set(at, { text })} />
          <button
            type="button"
            class="ib"
            aria-label={say`Remove finding ${at + 1}`}
            onClick={() => onEdit({ findings: notes.findings.toSpliced(at, 1) })}
          >
            <Icon name="x" />
          </button>
        </div>
      ))}
      <button
        type="button"
        class="b low"
        onClick={() =>
          onEdit({ findings: [...notes.findings, { about: say`the whole file`, weight: 'remark', text: '' }] })
        }
      >
        {say`Add a finding`}
      </button>
    </section>
  )
}
