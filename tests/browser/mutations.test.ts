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
