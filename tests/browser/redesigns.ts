/** Runs seeded redesigns of pages and adds up what became of the controls. */
import type { Browser } from 'puppeteer-core'
import type { PageSource } from '../pages/places/pages.ts'
import type { Redesigned } from '../pages/places/redesign-bench.ts'
import { Bench } from './isolated.ts'

export interface Total extends Redesigned {
  page: string
}

export async function redesigns(
  browser: Browser,
  form: string,
  sources: readonly PageSource[],
  seeds: readonly number[],
  /** The labels are in other words. */
  anew = false,
  /** Hears of each page when it is done. */
  done?: (total: Total) => void,
): Promise<Total[]> {
  const totals: Total[] = []
  for (const { name, markup, script } of sources) {
    const total: Total = { page: name, there: 0, found: 0, asked: 0, lost: [], wrong: [] }
    for (const seed of seeds) {
      const bench = await Bench.open(browser, form, markup, script)
      const one = await bench.call<Redesigned>('redesign', seed, anew)
      total.there += one.there
      total.found += one.found
      total.asked += one.asked
      total.lost.push(...one.lost)
      total.wrong.push(...one.wrong)
      await bench.page.close()
    }
    totals.push(total)
    done?.(total)
  }
  return totals
}

export function tableOf(totals: readonly Total[]): string {
  const rows = totals.map(({ page, there, found, asked, wrong }) =>
    [
      page.padEnd(22),
      String(there).padStart(6),
      String(found).padStart(6),
      String(asked).padStart(6),
      `${((100 * (found + asked)) / there).toFixed(1)} %`.padStart(8),
      String(wrong.length).padStart(6),
    ].join(''),
  )
  return [`${'page'.padEnd(22)} there found asked   share  wrong`, ...rows].join('\n')
}
