/** What the report's key for saving gives, taken before the browser keeps it. */
import type { Page } from 'puppeteer-core'

/** Presses “Save PDF” on a page of the book that shows a report; the bytes of the file. */
export async function savedPdf(page: Page): Promise<Uint8Array> {
  const bytes = await page.evaluate(async () => {
    const made = new Promise<Blob>((resolve) => {
      const before = URL.createObjectURL.bind(URL)
      URL.createObjectURL = (blob: Blob) => {
        resolve(blob)
        return before(blob)
      }
    })
    const button = [...document.querySelectorAll('button')].find(({ textContent }) => textContent === 'Save PDF')
    button?.click()
    return [...new Uint8Array(await (await made).arrayBuffer())]
  })
  return new Uint8Array(bytes)
}
