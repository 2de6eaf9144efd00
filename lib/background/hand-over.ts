/** The background's answer to one part of the helper that hands the page over to the other. */
import type { Answer } from '../answers.ts'
import { handOverSchema, type ToHelper } from '../messages.ts'
import { forHelper, type Sender } from './for-helper.ts'

/**
 * Takes a message that hands a page over; undefined for any other.
 * @param self the id of this extension
 * @param put puts the helper into a tab with its task
 */
export function takeHandOver(
  raw: unknown,
  sender: Sender,
  self: string,
  put: (tab: number, task: ToHelper) => Promise<void>,
): Promise<Answer> | undefined {
  const checked = handOverSchema.safeParse(raw)
  return checked.success ? forHelper(sender, self, (tab) => put(tab, checked.data.task)) : undefined
}
