/** From an HPXML file to the report of its test and its PDF, in the built extension. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { ElementHandle } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { hpxmlOf } from '../../lib/book/hpxml/export.ts'
import { demoDevice } from '../../lib/job/demo.ts'
import { eightPoints } from '../report/report-fixtures.ts'
import { launch, type Session } from './harness.ts'
import { savedPdf } from './saved-pdf.ts'

let session: Session
const folder = mkdtempSync(join(tmpdir(), 'report-'))

beforeAll(async () => {
  session = await launch()
})
afterAll(async () => {
  await session.close()
  rmSync(folder, { recursive: true })
})

test('a file of the standard becomes a job, whose report prints on one page and is saved as a PDF', async () => {
  const file = join(folder, 'house.xml')
  writeFileSync(file, hpxmlOf(eightPoints().job, [demoDevice()]))
  const page = await session.open(`chrome-extension://${session.extension.id}/book.html#settings`)
  const faults: string[] = []
  page.on('pageerror', (error) => faults.push(String(error)))

  const input = await page.waitForSelector('input[accept*="xml"]')
  await (input as ElementHandle<HTMLInputElement>).uploadFile(file)
  await page.waitForSelector('[aria-label="What house.xml would add"]')
  expect(
    await page.$$eval('[aria-label="What house.xml would add"] li', (all) => all.map((li) => li.textContent)),
  ).toEqual(['Test “final” of the enclosure on 2026-02-25, 8 readings, with its readings as typed.'])
  await page.locator('[aria-label="What house.xml would add"] .first').click()
  await page.waitForFunction(() => document.body.textContent?.includes('1 new job came from house.xml.'))

  await page.evaluate(() => {
    location.hash = '#jobs'
  })
  await page.locator('a[href^="#report"]').click()
  await page.waitForSelector('.sheet-page .plot')
  expect(await page.$eval('.sheet-page .vd', (verdict) => verdict.textContent)).toContain('Meets the limit, 3.0')
  const printed = Buffer.from(await page.pdf({ format: 'letter' })).toString('latin1')
  expect(printed.match(/\/Type\s*\/Page\b/g)).toHaveLength(1)

  const saved = new TextDecoder('latin1').decode((await savedPdf(page)).slice(0, 8))
  expect(saved).toMatch(/^%PDF-1\./)
  await page.locator('::-p-text(Attach PDF to the book)').click()
  await page.waitForFunction(() => document.body.textContent?.includes('was attached to the job.'))
  expect(faults).toEqual([])
})
