/** The background lets the frame of a dock join the helper of its tab: by a token that only the two know, once. */
import type { Answer } from '../messages/answers.ts'
import { browser } from '../browser.ts'
import { dockSchema } from '../messages/messages.ts'
import { say } from '../words/say.ts'
import type { Sender } from './for-helper.ts'

/** Not in memory: the background may be put to sleep between the two messages. */
const under = (tab: number) => `dock of tab ${tab}`

/** A filter of the root element draws the top layer otherwise as well, in Firefox: blurred, turned grey, or moved. */
const unfiltered = ':root{filter:none!important}'

const refused = (): Answer => ({ ok: false, message: say`Only the helper is heard.` })

/** Two messages at once must not use one token twice. */
let turn: Promise<unknown> = Promise.resolve()

/**
 * Takes a message about the dock; undefined for any other. The helper of a page gets a token, in place of the one before;
 * a frame of the same tab that names it is let in, and the token is worth nothing from then on.
 * @param self the id of this extension
 * @param open opens a page of the extension in a window of its own
 * @param bare lets the page draw nothing over the dock of a tab that opens, where the browser would
 */
export function admitDock(
  raw: unknown,
  sender: Sender,
  self: string,
  open: (path: string) => Promise<unknown>,
  bare: (tab: number, css: string) => Promise<unknown> = async () => undefined,
): Promise<Answer> | undefined {
  const checked = dockSchema.safeParse(raw)
  if (!checked.success) return undefined
  const message = checked.data
  const tab = sender.tab?.id
  if (sender.id !== self || tab === undefined) return Promise.resolve(refused())
  const answered = turn.then(async (): Promise<Answer> => {
    if (message.type === 'dock-opens') {
      if (sender.frameId !== 0) return refused()
      const token = crypto.randomUUID()
      await browser.storage.session.set({ [under(tab)]: token })
      // A page that cannot take it is left as it is.
      void bare(tab, unfiltered).catch(() => undefined)
      return { ok: true, token }
    }
    if (message.type === 'dock-apart') {
      if (sender.frameId !== 0) return refused()
      const token = crypto.randomUUID()
      await open(`/dock.html?tab=${tab}#${token}`)
      return { ok: true, token }
    }
    const known = (await browser.storage.session.get(under(tab)))[under(tab)]
    if (typeof known !== 'string' || known !== message.token || !sender.frameId) return refused()
    await browser.storage.session.remove(under(tab))
    return { ok: true }
  })
  turn = answered.catch(() => undefined)
  return answered
}
