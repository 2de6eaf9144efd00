import type { FormMap } from '../../form/schema.ts'
import { say } from '../../words/say.ts'
import { send } from './send.ts'

export interface KeptMoved {
  /** The form map as the book keeps it now; nothing when there was nothing to keep, or it was not kept. */
  map?: FormMap
  /** Why it was not kept; empty when all is well. */
  problem: string
}

/**
 * Has the book keep where the person said that bindings go by now.
 * @param before the form map as it is kept
 * @param now the same with the person's answers
 * @param moved ids of the bindings whose answers are kept
 */
export async function keepMoved(before: FormMap, now: FormMap, moved: ReadonlySet<string>): Promise<KeptMoved> {
  if (moved.size === 0) return { problem: '' }
  const answered = new Map(now.bindings.map((binding) => [binding.id, binding]))
  const bindings = before.bindings.map((one) => (moved.has(one.id) ? (answered.get(one.id) ?? one) : one))
  const map = { ...before, bindings, version: before.version + 1, updated: new Date().toISOString() }
  const sent = await send({ type: 'save-map', map })
  if (!sent.ok) return { problem: say`The form map does not keep which controls you chose: ${sent.message}` }
  // One from the office becomes the person's own.
  return { map: { ...map, ...sent.map }, problem: '' }
}
