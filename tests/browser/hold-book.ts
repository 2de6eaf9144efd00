/** A book that does not answer. */
import type { Page } from 'puppeteer-core'

/** Keeps everybody else out of the fills under way until `letGo` is called, as a view that hangs would. */
export const hold = (book: Page): Promise<unknown> =>
  book.evaluate(`new Promise((ready) => {
    let held = true
    window.letGo = () => { held = false }
    indexedDB.open('gapsum').onsuccess = ({ target }) => {
      const fills = target.result.transaction('fills', 'readwrite').objectStore('fills')
      const again = () => { if (held) fills.get('none').onsuccess = again }
      again()
      fills.get('none').onsuccess = () => ready()
    }
  })`)
