/** The background's answer to a helper that meets a control of a kind that its form map does not name. */
import type { Answer } from '../messages/answers.ts'
import { extraSchema } from '../messages/messages.ts'
import { forHelper, type Sender } from './for-helper.ts'

/**
 * Takes a message that asks for the writers of further kinds; undefined for any other.
 * @param self the id of this extension
 * @param put puts a script of the extension into a tab
 */
export function bringExtra(
  raw: unknown,
  sender: Sender,
  self: string,
  put: (tab: number, script: string) => Promise<unknown>,
): Promise<Answer> | undefined {
  if (!extraSchema.safeParse(raw).success) return undefined
  return forHelper(sender, self, (tab) => put(tab, '/extra.js'))
}
