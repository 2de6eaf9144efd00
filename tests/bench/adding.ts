/** What the second copy costs: the same code with it and without it, in turns, in one page of the extension. */
import type { Page } from 'puppeteer-core'
import { bundle } from '../browser/isolated.ts'
import type { Row } from './part.ts'
import { noSecondCopy } from './without-copy.ts'

const rounds = 60
/** Lines of a fill: a rebate form with as many controls is common practice, no source. */
const lines = 24

const median = (list: readonly number[]) => list.toSorted((a, b) => a - b)[list.length >> 1]!

type Times = { entry: number[]; fill: number[]; key: number[] }

/** Ratios of the medians, in a book that holds some entries already. */
export async function adding(page: Page): Promise<Row[]> {
  const [on, off] = await Promise.all([
    bundle('../bench/adding-page.ts', 'copied'),
    bundle('../bench/adding-page.ts', 'alone', 'production', [noSecondCopy]),
  ])
  await page.evaluate(`${on}; ${off}; Object.assign(globalThis, { copied, alone }); undefined`)
  const times: Record<'copied' | 'alone', Times> = {
    copied: { entry: [], fill: [], key: [] },
    alone: { entry: [], fill: [], key: [] },
  }
  for (let round = -2; round < rounds; round++)
    for (const way of ['copied', 'alone'] as const) {
      const { entry, fill } = (await page.evaluate(`${way}.addOne(${lines})`)) as { entry: number; fill: number }
      const key = (await page.evaluate(`${way}.typeOne()`)) as number
      // The first ones open what the others find open.
      if (round < 0) continue
      times[way].entry.push(entry)
      times[way].fill.push(fill)
      times[way].key.push(key)
    }
  const rows = (['entry', 'fill', 'key'] as const).map((what): Row => {
    const [with_, alone] = [median(times.copied[what]), median(times.alone[what])]
    const words = { entry: 'adding an entry', fill: `a fill of ${lines} lines`, key: 'keeping a keystroke' }[what]
    const ratio = { what: `${words}, with the second copy / without`, value: with_ / alone, unit: 'x' }
    return what === 'entry' ? Object.assign(ratio, { aim: 'at most 1.3', met: with_ / alone <= 1.3 }) : ratio
  })
  rows.push({ what: 'adding an entry, with the second copy', value: median(times.copied.entry), unit: 'ms' })
  return rows
}
