import type { Proposals } from './use-proposals.ts'
import { say } from '../../words/say.ts'

interface MappingFootProps {
  /** A control is being asked about. */
  asking: boolean
  /** It has a binding that can be removed. */
  bound: boolean
  canBind: boolean
  proposals: Proposals
  canPlan: boolean
  onBind: () => void
  onNext: () => void
  onRemove: () => void
  onBindAll: () => void
  onPlan: () => void
  onClose: () => void
}

/** The actions of mapping; the first one goes on. */
export function MappingFoot(props: MappingFootProps) {
  const { asking, bound, canBind, proposals, canPlan, onBind, onNext, onRemove, onBindAll, onPlan, onClose } = props
  if (asking) {
    return (
      <>
        <button type="button" class="b first" disabled={!canBind} onClick={onBind}>
          {say`Bind, then next`}
        </button>
        <button type="button" class="b" onClick={onNext}>
          {say`Skip`}
        </button>
        {bound && (
          <button type="button" class="b" onClick={onRemove}>
            {say`Remove`}
          </button>
        )}
      </>
    )
  }
  if (proposals.open) {
    return (
      <>
        {!proposals.waiting && (
          <button type="button" class="b first" disabled={proposals.count === 0} onClick={onBindAll}>
            {proposals.count === 1 ? say`Bind this one` : say`Bind these ${proposals.count}`}
          </button>
        )}
        <button type="button" class="b" onClick={() => proposals.show(false)}>
          {say`Back`}
        </button>
      </>
    )
  }
  return (
    <>
      <button type="button" class="b first" disabled={!canPlan} onClick={onPlan}>
        {say`Show the plan`}
      </button>
      <button type="button" class="b" onClick={onClose}>
        {say`Close`}
      </button>
    </>
  )
}
