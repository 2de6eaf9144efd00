/** The background's answer to a helper that fills: what lets the pointer through is met by it meanwhile. */
import type { Answer } from '../messages/answers.ts'
import { meetAllSchema } from '../messages/messages.ts'
import { forHelper, type Sender } from './for-helper.ts'

/** In the person's own style sheet, which no style of a page overrules. */
export const meetsAll = '*,*::before,*::after{pointer-events:auto!important;interactivity:auto!important}'

/**
 * Takes a message that asks for it; undefined for any other.
 * @param self the id of this extension
 * @param turn puts a style sheet of the person's own into all frames of a tab, or takes it out
 */
export function meetAll(
  raw: unknown,
  sender: Sender,
  self: string,
  turn: (tab: number, on: boolean, css: string) => Promise<unknown>,
): Promise<Answer> | undefined {
  const checked = meetAllSchema.safeParse(raw)
  return checked.success ? forHelper(sender, self, (tab) => turn(tab, checked.data.on, meetsAll)) : undefined
}
