/** Redesigned pages: what was mapped is found again, or asked about; another control is never taken for it. */
import type { Browser } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { librarySources, pageSources, type PageSource } from '../pages/places/pages.ts'
import { Bench, bundle, startBrowser } from './isolated.ts'
import { redesigns, tableOf } from './redesigns.ts'

let browser: Browser
let form: string
let sources: PageSource[]
let libraries: PageSource[]

beforeAll(async () => {
  ;[browser, form, sources, libraries] = await Promise.all([
    startBrowser(),
    bundle('../pages/places/redesign-bench.ts', 'bench'),
    pageSources(),
    librarySources(['Svelte', 'ARIA patterns']),
  ])
})

afterAll(() => browser?.close())

test('three redesigns of every page: 95 of 100 controls found again, none mistaken', async () => {
  const results = await redesigns(browser, form, [...sources, ...libraries], [1, 2, 3])
  console.log(tableOf(results))
  expect(results.flatMap(({ wrong }) => wrong)).toEqual([])
  for (const { page, there, found, lost } of results)
    expect(found / there, `${page}: ${lost.join('\n')}`).toBeGreaterThanOrEqual(0.9)
  const sum = (of: 'there' | 'found') => results.reduce((total, each) => total + each[of], 0)
  expect(sum('found') / sum('there')).toBeGreaterThanOrEqual(0.95)
})

test('a page that is not redesigned is found whole', async () => {
  for (const { markup, script, name } of [...sources, ...libraries]) {
    const bench = await Bench.open(browser, form, markup, script)
    const { there, found, lost, wrong } = await bench.call<{
      there: number
      found: number
      lost: string[]
      wrong: string[]
    }>('again')
    expect({ name, lost, wrong }).toEqual({ name, lost: [], wrong: [] })
    expect(found).toBe(there)
    expect(there).toBeGreaterThan(3)
    await bench.page.close()
  }
})
