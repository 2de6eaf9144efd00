/** A sample of the random cases; `npm run soak hostile` runs 20,000 of them. */
import type { Browser } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { bundle, startBrowser } from './isolated.ts'
import { randomMaps, randomMessages, randomPages } from './random-cases.ts'

let browser: Browser
let code: string

beforeAll(async () => {
  ;[browser, code] = await Promise.all([startBrowser(), bundle('../pages/hostile/random-page.ts', 'bench')])
})

afterAll(() => browser?.close())

test('300 messages: none breaks the check, and shape and schema agree', () => {
  expect(randomMessages(1, 300)).toEqual([])
})

test('200 form maps on random pages: each gives a plan', async () => {
  expect(await randomMaps(browser, code, 1, 200)).toEqual([])
})

test('50 random pages that change while they are filled: no crash, no wrong entry', async () => {
  expect(await randomPages(browser, code, 1, 50)).toEqual([])
})
