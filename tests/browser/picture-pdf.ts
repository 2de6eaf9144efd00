/** Takes a picture of the first page of a PDF, as Firefox's own reader draws it. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { launch } from 'puppeteer-core'
import { findBrowser } from './find-browser.ts'

/** @param path of the picture, a PNG */
export async function picturePdf(bytes: Uint8Array, path: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'pdf-'))
  const browser = await launch({ browser: 'firefox', executablePath: findBrowser('firefox'), headless: true })
  try {
    const file = join(folder, 'report.pdf')
    writeFileSync(file, bytes)
    const page = await browser.newPage()
    await page.setViewport({ width: 1100, height: 1400 })
    await page.goto(`${pathToFileURL(file)}#zoom=125`)
    const first = await page.waitForSelector('.page[data-page-number="1"][data-loaded="true"]')
    await new Promise((done) => setTimeout(done, 1000))
    await first?.screenshot({ path: path as `${string}.png` })
  } finally {
    await browser.close()
    rmSync(folder, { recursive: true })
  }
}
