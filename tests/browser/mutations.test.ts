/** One redesign of every page; three of each: `npm run test:release`, fifty: `npm run soak redesigns`. */
import type { Browser } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { pageSources, type PageSource } from '../pages/places/pages.ts'
import { bundle, startBrowser } from './isolated.ts'
import { redesigns } from './redesigns.ts'

let browser: Browser
let form: string
let sources: PageSource[]

beforeAll(async () => {
  ;[browser, form, sources] = await Promise.all([
    startBrowser(),
    bundle('../pages/places/redesign-bench.ts', 'bench'),
    pageSources(),
  ])
})

afterAll(() => browser?.close())

test('a redesign of every page: nine of ten controls found again, none mistaken', async () => {
  for (const { page, there, found, lost, wrong } of await redesigns(browser, form, sources, [4])) {
    expect(wrong).toEqual([])
    expect(found / there, `${page}: ${lost.join('\n')}`).toBeGreaterThanOrEqual(0.9)
  }
})

test('a redesign in other words, fields gone and others under their name: found or asked about, none mistaken', async () => {
  const totals = await redesigns(browser, form, sources, [7], true)
  expect(totals.flatMap(({ wrong }) => wrong)).toEqual([])
  const sum = (of: 'there' | 'found' | 'asked') => totals.reduce((total, each) => total + each[of], 0)
  const lost = totals.flatMap((each) => each.lost)
  expect((sum('found') + sum('asked')) / sum('there'), `${lost.join('\n')}`).toBeGreaterThanOrEqual(0.95)
  expect(sum('asked')).toBeGreaterThan(10)
})
