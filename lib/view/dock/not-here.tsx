import type { Material } from '../../form/material.ts'
import type { Binding } from '../../form/schema.ts'
import { Icon } from '../parts/icons.tsx'
import { boundTo } from './describe.ts'
import { say } from '../../words/say.ts'

interface NotHereProps {
  bindings: readonly Binding[]
  material: Material
  onRemove: (binding: string) => void
  /** Gives the binding another control of the page. */
  onMove: (binding: Binding) => void
}

/** Bindings of the map whose control is not on the page now: another step may show it, or it is gone for good. */
export function NotHere({ bindings, material, onRemove, onMove }: NotHereProps) {
  if (bindings.length === 0) return null
  return (
    <details>
      <summary>
        <Icon name="tw" /> {say`Bound, but not on the page now`} <span class="q">{bindings.length}</span>
      </summary>
      <ul class="list">
        {bindings.map((binding) => {
          const { id, control, source } = binding
          return (
            <li key={id} class="row">
              <Icon name="notfound" />
              <span>
                {control.section && `${control.section}, `}
                {control.name}
                <small class="q">{boundTo(source, material)}</small>
              </span>
              <button
                type="button"
                class="b low"
                aria-label={say`Point ${control.name} to another control`}
                onClick={() => onMove(binding)}
              >
                {say`Point anew`}
              </button>
              <button type="button" class="b low" onClick={() => onRemove(id)}>
                {say`Remove`}
              </button>
            </li>
          )
        })}
      </ul>
    </details>
  )
}
