/** A frame of another site, allowed in Firefox as a person allows it. */
import type { Page } from 'puppeteer-core'
import type { FirefoxSession } from './firefox.ts'
import type { Surface } from './surface.ts'

/** Asks for the frame in the helper, allows its site in the book, and comes back to the page. */
export async function allowFrame(session: FirefoxSession, page: Page, helper: Surface, site: string): Promise<void> {
  await helper.click('button', 'Ask to see it')
  const book = await session.waitForPage('/book.html')
  await book.click('button', `Allow frames of ${site}`)
  await book.wait(/Take back/)
  await book.close()
  await page.bringToFront()
}
