/** How the helper gets into a page. */
import { browser } from '../../browser.ts'
import { toHelperSchema, type ToHelper } from '../../messages.ts'

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

/**
 * Puts the helper into a tab and hands it its task.
 * @throws Error that says what the person can do, when the page cannot be reached.
 */
export async function sendHelper(tab: number, message: ToHelper): Promise<void> {
  try {
    await browser.scripting.executeScript({ target: { tabId: tab }, files: ['/helper.js'] })
  } catch (error) {
    throw new Error(
      `The browser did not let the helper into this page (${error instanceof Error ? error.message : String(error)}). ` +
        'Open the form in this tab, then open this window again from the toolbar.',
      { cause: error },
    )
  }
  // The helper itself takes what it gets from the extension as checked.
  const checked = toHelperSchema.parse(message)
  // The helper listens as soon as its script has run; on a busy page that may take a moment.
  for (let attempt = 1; ; attempt++) {
    try {
      await browser.tabs.sendMessage(tab, checked, { frameId: 0 })
      return
    } catch (error) {
      if (attempt === 20) {
        throw new Error('The page did not answer. Reload it and try again.', { cause: error })
      }
      await pause(50)
    }
  }
}
