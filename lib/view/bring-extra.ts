/** The background's answer to a helper that meets a control of a kind that its form map does not name. */
import type { Runtime } from 'webextension-polyfill'
import type { Answer } from '../answers.ts'
import { extraSchema } from '../messages.ts'
import { say } from '../words/say.ts'

interface Sender {
  id?: string | undefined
  frameId?: number | undefined
  tab?: Pick<NonNullable<Runtime.MessageSender['tab']>, 'id'> | undefined
}

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
  const tab = sender.tab?.id
  if (sender.id !== self || tab === undefined || sender.frameId !== 0)
    return Promise.resolve({ ok: false, message: say`Only the helper is heard.` })
  return put(tab, '/extra.js').then(
    () => ({ ok: true }),
    (error: unknown) => ({ ok: false, message: error instanceof Error ? error.message : String(error) }),
  )
}
