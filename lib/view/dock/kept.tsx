import { Icon } from '../parts/icons.tsx'
import type { Kept as KeptState } from './use-form-map.ts'
import { say } from '../../words/say.ts'

/** Whether what was bound is safe. */
export function Kept({ kept }: { kept: KeptState }) {
  if (kept.state === 'nothing yet') return null
  if (kept.state === 'not kept') {
    return (
      <span class="note bad" role="alert">
        {say`Not kept. ${kept.message}`}
      </span>
    )
  }
  return (
    <span class="end" role="status">
      {kept.state === 'kept' ? (
        <>
          <Icon name="tick" /> {say`kept`}
        </>
      ) : (
        say`keeping…`
      )}
    </span>
  )
}
