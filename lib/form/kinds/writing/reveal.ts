/** Waiting for a control to be seen: a list that was used before it may still lie over it. */
import type { Control } from '../../page/controls.ts'
import { upward } from '../../page/dom.ts'
import { wrapperOf } from '../../page/face.ts'
import { unseenBecause } from '../../page/seen.ts'
import { until } from './wait.ts'

/** Says that the pointer went down beside the control: what has opened over it closes at that. */
function pressBeside(element: HTMLElement): void {
  const beside = upward(wrapperOf(element)) ?? element
  const init = { bubbles: true, cancelable: true, composed: true }
  for (const type of ['pointerdown', 'pointerup']) beside.dispatchEvent(new PointerEvent(type, init))
  for (const type of ['mousedown', 'mouseup']) beside.dispatchEvent(new MouseEvent(type, init))
}

/** When waiting was last in vain: what follows soon after is likely covered for good as well. */
let vain = -Infinity

/** Why a person cannot see the control, also after a moment; nothing when they can. */
export async function reveal({ element, elements }: Control): Promise<string | undefined> {
  const limit = performance.now() - vain < 5000 ? 100 : 400
  const uncovered = () => until(() => unseenBecause(elements) === undefined, limit, 100)
  if (unseenBecause(elements) === undefined || (await uncovered())) return undefined
  pressBeside(element)
  if (await uncovered()) return undefined
  vain = performance.now()
  return unseenBecause(elements)
}
