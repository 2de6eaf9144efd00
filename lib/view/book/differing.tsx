import type { Differing } from '../../book/differing.ts'
import { useId } from '../parts/use-id.ts'
import { differingFields } from './differing-words.ts'
import { say } from '../../words/say.ts'

/** What a thing that differs is called. */
export function differingName({ kind, yours }: Pick<Differing, 'kind' | 'yours'>): string {
  const names = { device: say`Device ${yours.name}`, limit: say`Limit ${yours.name}`, map: say`Form map ${yours.name}` }
  return names[kind]
}

interface Props {
  all: readonly Differing[]
  /** Those of which the file's is taken. */
  taken: readonly Differing[]
  onChange: (taken: Differing[]) => void
}

/** What is here with other content: compared field by field, and yours or the file's is chosen. */
export function DifferingThings({ all, taken, onChange }: Props) {
  if (all.length === 0) return null
  return (
    <section class="differing" aria-label={say`What is here with other content`}>
      <h4>{say`What is here with other content`}</h4>
      {all.length > 1 && (
        <div class="acts">
          <button type="button" class="b low" onClick={() => onChange([])}>
            {say`Keep all of yours`}
          </button>
          <button type="button" class="b low" onClick={() => onChange([...all])}>
            {say`Take all of the file’s`}
          </button>
        </div>
      )}
      {all.map((one) => (
        <One
          key={`${one.kind} ${one.yours.id}`}
          one={one}
          taken={taken.includes(one)}
          onPick={(take) => onChange(all.filter((other) => (other === one ? take : taken.includes(other))))}
        />
      ))}
    </section>
  )
}

function One({ one, taken, onPick }: { one: Differing; taken: boolean; onPick: (take: boolean) => void }) {
  const name = differingName(one)
  const group = useId()
  const choices = [
    [false, say`Keep yours`],
    [true, one.kind === 'map' ? say`Take the file’s as the next version` : say`Take the file’s`],
  ] as const
  return (
    <fieldset>
      <legend>{name}</legend>
      <div class="scroll">
        <table class="t">
          <caption class="vh">{say`${name}: what differs`}</caption>
          <thead>
            <tr>
              <th scope="col">{say`What differs`}</th>
              <th scope="col">{say`Yours`}</th>
              <th scope="col">{say`In the file`}</th>
            </tr>
          </thead>
          <tbody>
            {differingFields(one).map(({ field, yours, theirs }, at) => (
              // Controls of a form may have one name.
              <tr key={at}>
                <th scope="row">{field}</th>
                <td>{yours}</td>
                <td>{theirs}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {one.gone && <p>{say`Yours was deleted. The file’s would be in the list again.`}</p>}
      {choices.map(([take, words]) => (
        <label key={words}>
          <input type="radio" name={group} checked={taken === take} onChange={() => onPick(take)} /> {words}
        </label>
      ))}
      {taken && <p class="q">{takenWords[one.kind]}</p>}
    </fieldset>
  )
}

const takenWords: Record<Differing['kind'], string> = {
  device: say`Jobs that use it are computed with the file’s from then on; compare it with the certificate. Entries that are sealed stay as they are.`,
  limit: say`Tests that it was copied into keep their number; compare it with the paper. Entries that are sealed stay as they are.`,
  map: say`Yours stays below it, as an earlier version. Accept it only if you know its address and every line. Entries that are sealed stay as they are.`,
}
