import { mapVersions } from '../../book/maps.ts'
import type { FormMap } from '../../form/schema.ts'
import type { KnownItems } from './known-items.ts'
import { sourceWords, sourceWrite } from './source-words.ts'
import { useLive } from '../parts/use-live.ts'
import { count, dayAndYear, placeWords, time } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

interface Props {
  id: string
  newest: number
  items: KnownItems
  /** Takes an earlier version as the draft. */
  onTake: (map: FormMap) => void
}

/** The earlier versions of a form map, to look at or to go back to. */
export function MapVersions({ id, newest, items, onTake }: Props) {
  const versions = useLive(() => mapVersions(id), ['maps'], id)
  const earlier = versions.value?.filter(({ version }) => version !== newest) ?? []
  if (earlier.length === 0) return null
  return (
    <details class="sec versions">
      <summary>
        <h3>{count(earlier.length, 'earlier version')}</h3>
      </summary>
      {earlier.map((map) => (
        <details key={map.version} class="sec">
          <summary>
            {say`Version ${map.version}`}{' '}
            <span class="q">
              {dayAndYear(map.updated)}, {time(map.updated)}, {count(map.bindings.length, 'binding')}
            </span>
          </summary>
          <p class="q">
            {map.name}, {placeWords(map.address)}
          </p>
          <ol class="bindings">
            {map.bindings.map(({ id: key, control, source }) => (
              <li key={key}>
                <div class="line">
                  <span>{control.name}</span>
                  <span class="src">{sourceWords(source, items)}</span>
                  <span class="q how">{sourceWrite(source)}</span>
                </div>
              </li>
            ))}
          </ol>
          <button type="button" class="b low" onClick={() => onTake(map)}>
            {say`Go back to version ${map.version}`}
          </button>
        </details>
      ))}
    </details>
  )
}
