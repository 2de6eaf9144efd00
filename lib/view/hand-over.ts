/** The background's answer to one part of the helper that hands the page over to the other. */
import type { Runtime } from 'webextension-polyfill'
import { handOverSchema, type ToHelper } from '../messages.ts'
import { say } from '../words/say.ts'

type Answer = { ok: true } | { ok: false; message: string }

interface Sender {
  id?: string | undefined
  frameId?: number | undefined
  tab?: Pick<NonNullable<Runtime.MessageSender['tab']>, 'id'> | undefined
}

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
  if (!checked.success) return undefined
  const tab = sender.tab?.id
  if (sender.id !== self || tab === undefined || sender.frameId !== 0)
    return Promise.resolve({ ok: false, message: say`Only the helper is heard.` })
  return put(tab, checked.data.task).then(
    () => ({ ok: true }),
    (error: unknown) => ({ ok: false, message: error instanceof Error ? error.message : String(error) }),
  )
}
