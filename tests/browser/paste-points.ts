import type { Page } from 'puppeteer-core'

/** Pastes lines of readings, as a person would, into the first cell of the calculator's table. */
export const pastePoints = (page: Page, lines: readonly string[]): Promise<void> =>
  page.$eval(
    '[data-row="0"][data-column="pressure"]',
    (box, text) => {
      const data = new DataTransfer()
      data.setData('text/plain', text)
      box.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))
    },
    lines.join('\n'),
  )
