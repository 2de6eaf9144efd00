/** Nothing is typed into a field that stays out of sight when it has the focus. */
import { say } from '../../../words/say.ts'
import { kept } from '../../kept.ts'
import { hiddenBecause } from '../../page/visible.ts'
import { until } from './wait.ts'

declare global {
  /** Why elements cannot be seen now: set where writers are called from, so that no script of writers has it twice. */
  var gapsumUnseen: ((elements: readonly HTMLElement[]) => string | undefined) | undefined
}

const unseen = (element: HTMLElement): string | undefined => hiddenBecause(element) ?? kept('gapsumUnseen')!([element])

/**
 * Waits for a field that shows only while it has the focus, as under a label that lies over it.
 *
 * @throws Error when it cannot be seen now either
 */
export async function seenInFocus(element: HTMLElement): Promise<void> {
  if (unseen(element) === undefined || (await until(() => unseen(element) === undefined, 500))) return
  throw new Error(say`cannot be seen on the page now (${unseen(element) ?? ''})`)
}
