/** The book in a real browser: opening, searching, verifying with 1,000, 10,000 and 100,000 entries. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'puppeteer-core'
import { built, launch, type Session } from '../browser/harness.ts'
import { bundle } from '../browser/isolated.ts'
import { adding } from './adding.ts'
import type { Row } from './part.ts'
import { builtWithout, noSecondCopy } from './without-copy.ts'

const sizes = [1000, 10_000, 100_000].filter((size) => size <= Number(process.env['BENCH_ENTRIES'] ?? Infinity))

/** Whoever builds meanwhile does not change what is measured. */
const extension = join(mkdtempSync(join(tmpdir(), 'extension-')), 'built')

const searches = {
  'a word of every entry': { text: 'marrowby tann' },
  'a word of one entry, the oldest': { text: 'apply/1/part-c' },
  'the beginning of a fingerprint that none has': { text: 'zzzzq' },
  'an outcome of one entry in a few hundred': { outcome: 'refused' },
  'a street and an outcome': { text: 'quarry', outcome: 'refused' },
  'entries of one job': { job: 'job-7' },
  'one day long ago': { from: '2016-01-03', to: '2016-01-03' },
} as const

/** The least of several times: what else the machine does only adds to it. */
const least = (list: readonly number[]) => Math.min(...list)

async function loaded(session: Session, code: string): Promise<Page> {
  const { page } = await session.openPage('/book.html#limits')
  await page.evaluate(`${code}; globalThis.bench = bench; undefined`)
  return page
}

type FirstRow = { whole: number; own: number }

/** Milliseconds to the first row of the list: from the start of the navigation, and from when the page was parsed. */
async function firstRow(session: Session): Promise<FirstRow> {
  const [one] = await firstRows([session])
  return one!
}

/** The same in several browsers, in turns. */
async function firstRows(sessions: readonly Session[]): Promise<FirstRow[]> {
  const times = sessions.map((): FirstRow[] => [])
  for (let round = 0; round < 7; round++)
    for (const [at, session] of sessions.entries()) times[at]!.push(await firstRowOnce(session))
  return times.map((all) => ({ whole: least(all.map(({ whole }) => whole)), own: least(all.map(({ own }) => own)) }))
}

async function firstRowOnce(session: Session): Promise<FirstRow> {
  const page = await session.browser.newPage()
  await page.evaluateOnNewDocument(() => {
    const look = () => {
      if (document.querySelector('table.lg tbody tr')) Object.assign(window, { firstRow: performance.now() })
      else requestAnimationFrame(look)
    }
    requestAnimationFrame(look)
  })
  await page.goto(`chrome-extension://${session.extension.id}/book.html#entries`)
  await page.waitForFunction('window.firstRow', { polling: 20 })
  const whole = (await page.evaluate('window.firstRow')) as number
  const parsed = (await page.evaluate('performance.getEntriesByType("navigation")[0].domInteractive')) as number
  await page.close()
  return { whole, own: whole - parsed }
}

/** So many entries are in the books that are compared with and without the second copy. */
const compared = Math.min(10_000, sizes.at(-1)!)

/** First screen and search with the second copy and without it, in two browsers beside each other, in turns. */
async function againstWithout(session: Session, page: Page): Promise<Row[]> {
  const plain = await launch({ extension: await builtWithout(), patience: 0 })
  try {
    const code = await bundle('../bench/book-page.ts', 'bench', 'production', [noSecondCopy])
    const other = await loaded(plain, code)
    for (let there = 0; there < compared; there += 500) await other.evaluate(`bench.fillBook(${there + 500})`)
    await new Promise((done) => setTimeout(done, 15_000))
    const [copied, alone] = await firstRows([session, plain])
    const rows = [ratio('first screen', copied!.own, alone!.own, 1.1)]
    const totals = { copied: 0, alone: 0 }
    for (const listing of Object.values(searches)) {
      const ask = `bench.search(${JSON.stringify(listing)})`
      await page.bringToFront()
      totals.copied += ((await page.evaluate(ask)) as { ms: number }).ms
      await other.bringToFront()
      totals.alone += ((await other.evaluate(ask)) as { ms: number }).ms
    }
    return [...rows, ratio(`${Object.keys(searches).length} searches together`, totals.copied, totals.alone, 1.1)]
  } finally {
    await plain.close()
  }
}

const ratio = (what: string, copied: number, alone: number, most: number): Row => ({
  what: `${compared.toLocaleString('en-US')}: ${what}, with the second copy / without`,
  value: copied / alone,
  unit: 'x',
  aim: `unchanged: at most ${most}`,
  met: copied / alone <= most,
})

async function heap(page: Page): Promise<number> {
  const session = await page.createCDPSession()
  await session.send('HeapProfiler.collectGarbage')
  const { usedSize } = await session.send('Runtime.getHeapUsage')
  await session.detach()
  return usedSize / 1e6
}

export default async function book(): Promise<Row[]> {
  const code = await bundle('../bench/book-page.ts', 'bench')
  cpSync(built, extension, { recursive: true })
  const session = await launch({ extension, patience: 0 })
  const rows: Row[] = []
  const verifying: number[] = []
  let there = 0
  try {
    const page = await loaded(session, code)
    const call = <T>(name: string, arg?: unknown) =>
      page.evaluate(`bench.${name}(${arg === undefined ? '' : JSON.stringify(arg)})`) as Promise<T>
    for (const size of sizes) {
      const at = size.toLocaleString('en-US')
      await page.bringToFront()
      // In steps, so that memory shows what the book holds and not what made it.
      let filling = 0
      for (; there < size; there += 500) filling += await call<number>('fillBook', there + 500)
      rows.push({ what: `${at}: making and taking in those that are new`, value: filling / 1000, unit: 's' })
      // Whoever opens a long book has not written it in the minute before: the browser still sorts what came in.
      await new Promise((done) => setTimeout(done, 15_000))
      const first = await firstRow(session)
      rows.push({ what: `${at}: first screen, the tab and all`, value: first.whole, unit: 'ms' })
      rows.push({ what: `${at}: first screen`, value: first.own, unit: 'ms', aim: 'under 150', met: first.own < 150 })
      await page.bringToFront()
      for (const [words, listing] of Object.entries(searches)) {
        const { ms, found } = await call<{ ms: number; found: number }>('search', listing)
        rows.push({ what: `${at}: ${words} (${found} found)`, value: ms, unit: 'ms', aim: 'under 50', met: ms < 50 })
      }
      if (size === compared) rows.push(...(await againstWithout(session, page)))
      if (size === sizes[0]) rows.push(...(await adding(page)))
      const { ms, ok } = await call<{ ms: number; ok: boolean }>('check')
      verifying.push(ms / (await call<number>('entries')))
      rows.push({ what: `${at}: verifying`, value: ms, unit: 'ms', aim: 'the chain fits', met: ok })
      rows.push({ what: `${at}: memory of the page after it`, value: await heap(page), unit: 'MB' })
    }
    const growth = verifying.at(-1)! / verifying[0]!
    rows.push({
      what: 'verifying an entry, of the longest book / of the shortest',
      value: growth,
      unit: 'x',
      aim: 'linear: at most 1.5',
      met: growth <= 1.5,
    })
  } finally {
    await session.close()
    rmSync(extension, { recursive: true, force: true })
  }
  return rows
}
