/** The popup: from a typed digit to the rendered figure, and its first paint against a blank page of the extension. */
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { built, launch, type Session } from '../browser/harness.ts'
import type { Row } from './part.ts'

const rounds = 25

const median = (list: readonly number[]): number => list.toSorted((a, b) => a - b)[Math.floor(list.length / 2)] ?? NaN

/** Milliseconds from the input event in the flow's cell to the figures table with another text in it. */
async function typing(session: Session): Promise<number[]> {
  const view = await session.openPage('/popup.html')
  await view.click('button', 'Open the demo job')
  await view.wait(/14 Tannery Row/)
  await view.click('button', 'after')
  await view.wait(/Meets the limit/)
  const times = (await view.page.evaluate(async (count) => {
    const cell = document.querySelector<HTMLInputElement>('[data-row="0"][data-column="flow"]')!
    const figures = document.querySelector('#figures')!
    const found: number[] = []
    for (let round = 0; round < count; round++) {
      const changed = new Promise<number>((done) => {
        const observer = new MutationObserver(() => {
          observer.disconnect()
          done(performance.now())
        })
        observer.observe(figures, { subtree: true, childList: true, characterData: true })
      })
      cell.value = String(700 + round)
      const start = performance.now()
      cell.dispatchEvent(new Event('input', { bubbles: true }))
      found.push((await changed) - start)
      await new Promise((done) => setTimeout(done, 60))
    }
    return found
  }, rounds)) as number[]
  await view.page.close()
  return times
}

async function firstPaint(session: Session, path: string): Promise<number> {
  const page = await session.browser.newPage()
  await page.goto(`chrome-extension://${session.extension.id}${path}`)
  await page.waitForFunction(`performance.getEntriesByType('paint').length > 0`)
  const at = (await page.evaluate(`performance.getEntriesByName('first-paint')[0].startTime`)) as number
  await page.close()
  return at
}

export default async function popup(): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'extension-'))
  const extension = join(folder, 'built')
  cpSync(built, extension, { recursive: true })
  // What a page costs that shows one word: the browser's own share.
  writeFileSync(join(extension, 'blank.html'), '<!doctype html><title>blank</title><p>blank</p>')
  const session = await launch({ extension, patience: 0 })
  try {
    const times = await typing(session)
    const paints: { popup: number; blank: number }[] = []
    for (let round = 0; round < 9; round++)
      paints.push({ blank: await firstPaint(session, '/blank.html'), popup: await firstPaint(session, '/popup.html') })
    const ms = median(times)
    const blank = median(paints.map((one) => one.blank))
    const ratio = median(paints.map((one) => one.popup)) / blank
    return [
      { what: 'typing to figures, median', value: ms, unit: 'ms', aim: '< 16 ms', met: ms < 16 },
      { what: 'typing to figures, slowest of 25', value: Math.max(...times), unit: 'ms' },
      { what: 'first paint of a blank page', value: blank, unit: 'ms' },
      { what: 'first paint of the popup', value: ratio, unit: 'x blank', aim: '≤ 1.15', met: ratio <= 1.15 },
    ]
  } finally {
    await session.close()
    rmSync(folder, { recursive: true, force: true })
  }
}
