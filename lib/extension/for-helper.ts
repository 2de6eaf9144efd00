/** What the background does for the helper of a page in the helper's own tab. */
import type { Runtime } from 'webextension-polyfill'
import type { Answer } from '../messages/answers.ts'
import { say } from '../words/say.ts'

export interface Sender {
  id?: string | undefined
  frameId?: number | undefined
  tab?: Pick<NonNullable<Runtime.MessageSender['tab']>, 'id'> | undefined
}

/**
 * Does what the helper asks for, and says whether it was done, or why not. Frames and other extensions are not heard.
 * @param self the id of this extension
 */
export async function forHelper(
  { id, frameId, tab }: Sender,
  self: string,
  act: (tab: number) => Promise<unknown>,
): Promise<Answer> {
  if (id !== self || tab?.id === undefined || frameId !== 0)
    return { ok: false, message: say`Only the helper is heard.` }
  try {
    await act(tab.id)
    return { ok: true }
  } catch (error) {
    return { ok: false, message: error instanceof Error ? error.message : String(error) }
  }
}
