import type { ImportPlan } from '../../book/import.ts'
import type { Beside, OtherPlanned } from '../../book/import-others.ts'
import { TextField } from './field.tsx'
import { count, dayAndYear } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** A file's name without its ending. */
export const bareName = (file: string): string => file.replace(/\.\w{1,5}$/, '')

/** What would become of a book that a file brings, in a sentence or two. */
function otherWords(one: OtherPlanned): string {
  const { name, refused, differs, canBegin, into, add, same, shared } = one
  if (refused) return refused
  if (differs || canBegin) return differs
  if (into && add === 0) return say`${name}: ${count(same, 'entry', 'entries')} of it are here already, beside yours.`
  if (into)
    return say`${name} is here beside yours with ${count(same, 'entry', 'entries')}: ${add} more will be added to it.`
  const begun =
    shared > 0
      ? say` Up to entry ${shared} it is the same as yours, and goes on otherwise: one of the two was begun anew after a loss, or continued in another place.`
      : ''
  return say`These are ${count(add, 'entry', 'entries')} of another book, ${span(one)}. They are kept beside yours, to be read: your own chain stays as it is.${begun}`
}

/**
 * What the books of a file are said to become, and why its own entries are not joined to this book. Where their chain does
 * not fit, one sentence says so.
 */
export function booksWords({ entries, others }: Pick<ImportPlan, 'entries' | 'others'>): string[] {
  const own = others.find(({ of }) => of === '')
  const told = others.filter((one) => one !== own || !(own.refused && entries.broken))
  return [...(own && !own.refused ? [] : [entries.refused]), ...told.map(otherWords)].filter(Boolean)
}

function span({ first, last }: OtherPlanned): string {
  const [from, to] = [dayAndYear(first), dayAndYear(last)]
  return from === to ? from : say`${from} to ${to}`
}

interface Props {
  plan: ImportPlan
  /** The file's name: a book that the file does not name is called after it. */
  file: string
  beside: readonly Beside[]
  onChange: (beside: Beside[]) => void
}

/** Which books of a file are to be kept beside, and what they are called. */
export function BesideFields({ plan, file, beside, onChange }: Props) {
  const asked = plan.others.filter(({ refused, add }) => !refused && add > 0)
  return (
    <>
      {asked.map((planned) => {
        const chosen = beside.find((one) => one.planned === planned)
        const others = beside.filter((one) => one.planned !== planned)
        const set = (name: string) => onChange([...others, { planned, name }])
        return (
          <div key={planned.of} class="fields">
            <label>
              <input
                type="checkbox"
                checked={chosen !== undefined}
                onChange={(event) =>
                  event.currentTarget.checked ? set(planned.name || bareName(file)) : onChange(others)
                }
              />{' '}
              {planned.differs
                ? say`Keep it all the same, as a book of its own`
                : planned.canBegin
                  ? say`Keep these entries beside this book, only to be read, instead of beginning this book with them`
                  : planned.into
                    ? say`Add them to ${planned.name}`
                    : say`Keep this book beside yours`}
            </label>
            {chosen && !planned.into && (
              <TextField label={say`What you call this book`} value={chosen.name} onInput={set} />
            )}
          </div>
        )
      })}
    </>
  )
}
