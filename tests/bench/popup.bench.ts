/** The popup: from a typed digit to the rendered figure, and its first paint and the calculator in it against a blank page behind the same button. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'puppeteer-core'
import { built, launch, type Session } from '../browser/harness.ts'
import type { Row } from './part.ts'

const rounds = 25

interface Opening {
  paint: number
  ready: number
}

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

/** Milliseconds from the press on the toolbar's button to the first paint of what opens, and to `stands` in it. */
async function opening(session: Session, page: Page, path: string, stands: string): Promise<Opening> {
  await page.bringToFront()
  const start = Date.now()
  const opened = session.browser.waitForTarget((target) => target.url().endsWith(path))
  await page.triggerExtensionAction(session.extension)
  const shown = await (await opened).asPage()
  await shown.waitForFunction(`performance.getEntriesByType('paint').length > 0`)
  const at = await shown.evaluate(() => performance.timeOrigin + performance.getEntriesByType('paint')[0]!.startTime)
  await shown.waitForSelector(stands)
  const ready = await shown.evaluate(() => performance.timeOrigin + performance.now())
  await shown.close()
  return { paint: at - start, ready: ready - start }
}

/** A copy of the extension whose button opens a page that shows one word: the browser's own share. */
function blankOf(extension: string): string {
  const blank = `${extension}-blank`
  cpSync(extension, blank, { recursive: true })
  writeFileSync(join(blank, 'blank.html'), '<!doctype html><title>blank</title><p>blank</p>')
  const path = join(blank, 'manifest.json')
  const manifest = JSON.parse(readFileSync(path, 'utf8')) as { action: object }
  writeFileSync(path, JSON.stringify({ ...manifest, action: { ...manifest.action, default_popup: 'blank.html' } }))
  return blank
}

async function openings(session: Session, blank: Session): Promise<{ popup: Opening; blank: Opening }> {
  const [page, other] = [await session.open('about:blank'), await blank.open('about:blank')]
  const found: { popup: Opening; blank: Opening }[] = []
  const measure = {
    blank: () => opening(blank, other, '/blank.html', 'p'),
    popup: () => opening(session, page, '/popup.html', 'main'),
  }
  for (let round = 0; round < 30; round++) {
    // Each goes first in every other round: what is closed just before slows what opens next.
    if (round % 2 === 0) found.push({ blank: await measure.blank(), popup: await measure.popup() })
    else found.push({ popup: await measure.popup(), blank: await measure.blank() })
  }
  // The first opening of each warms what every later one uses.
  const warm = found.slice(2)
  const middle = (which: 'popup' | 'blank'): Opening => ({
    paint: median(warm.map((one) => one[which].paint)),
    ready: median(warm.map((one) => one[which].ready)),
  })
  return { popup: middle('popup'), blank: middle('blank') }
}

export default async function popup(): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'extension-'))
  const extension = join(folder, 'built')
  cpSync(built, extension, { recursive: true })
  const session = await launch({ extension, patience: 0 })
  const blank = await launch({ extension: blankOf(extension), patience: 0 })
  try {
    const times = await typing(session)
    // Both browsers have done the same before they are compared.
    await typing(blank)
    const first = await openings(session, blank)
    const ms = median(times)
    const ratio = first.popup.paint / first.blank.paint
    return [
      { what: 'typing to figures, median', value: ms, unit: 'ms', aim: '< 16 ms', met: ms < 16 },
      { what: 'typing to figures, slowest of 25', value: Math.max(...times), unit: 'ms' },
      { what: 'from the button to the first paint of a blank page', value: first.blank.paint, unit: 'ms' },
      { what: 'the popup’s first paint', value: ratio, unit: 'x blank', aim: '≤ 1.15', met: ratio <= 1.15 },
      {
        what: 'until the calculator stands in the popup',
        value: first.popup.ready / first.blank.ready,
        unit: 'x blank',
      },
    ]
  } finally {
    await Promise.all([session.close(), blank.close()])
    rmSync(folder, { recursive: true, force: true })
  }
}
