/** How the helper gets into a page. */
import * as z from 'zod/mini'
import { getSettings } from '../book/settings.ts'
import { browser } from '../browser.ts'
import { isExtra } from '../form/kinds/extra-kinds.ts'
import type { ActivePage } from './page.ts'
import { isOwnForm, sendPractice } from './practice.ts'
import { say } from '../words/say.ts'
import { toHelperSchema, type ToHelper } from '../messages/messages.ts'

/** What the helper answers when it shows something else and will not leave it. */
const refusedSchema = z.object({ shown: z.literal(false), message: z.string() })

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

/** The helper, with the writers of further kinds where the form map names one. */
function scriptsFor(message: ToHelper): string[] {
  const extra = message.type === 'plan' && message.map.bindings.some(({ control }) => isExtra(control.kind))
  return [...(extra ? ['/extra.js'] : []), '/helper.js']
}

/** The task with the look that was chosen in the book. A book that cannot be read is no reason not to show the task. */
async function themed(message: ToHelper): Promise<ToHelper> {
  if (message.type !== 'map' && message.type !== 'plan') return message
  const { theme } = await getSettings().catch(() => ({ theme: undefined }))
  return theme ? { ...message, theme } : message
}

/**
 * Puts the helper into a tab and hands it its task.
 * @param page its tab, and its address as far as the browser tells it
 * @param beside whether it is sent from the sidebar, which the browser lets into no page by itself
 * @throws Error that says what the person can do, when the page cannot be reached or is being filled.
 */
export async function sendHelper(
  { tab, url }: Pick<ActivePage, 'tab' | 'url'>,
  message: ToHelper,
  beside = false,
): Promise<void> {
  if (isOwnForm(url)) return sendPractice(tab, await themed(message))
  try {
    await browser.scripting.executeScript({ target: { tabId: tab }, files: scriptsFor(message) })
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    throw new Error(
      beside
        ? say`The browser does not let the helper into this page yet: press the Gapsum button in the toolbar once while the page is shown, then try here again.`
        : say`The browser did not let the helper into this page (${reason}). Open the form in this tab, then open this window again from the toolbar.`,
      { cause: error },
    )
  }
  const checked = toHelperSchema.parse(await themed(message))
  // The helper listens as soon as its script has run; on a busy page that may take a moment.
  let answer: unknown
  for (let attempt = 1; ; attempt++) {
    try {
      answer = await browser.tabs.sendMessage(tab, checked, { frameId: 0 })
      break
    } catch (error) {
      if (attempt === 20) {
        throw new Error(say`The page did not answer. Reload it and try again.`, { cause: error })
      }
      await pause(50)
    }
  }
  const refused = refusedSchema.safeParse(answer)
  if (refused.success) throw new Error(refused.data.message)
}
