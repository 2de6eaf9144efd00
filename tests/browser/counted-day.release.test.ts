/** The aims of a day's work: how few clicks each part of it takes. `npm run bench clicks` prints the counts. */
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { startSite, type Site } from '../pages/site/server.ts'
import { bindSum, bothDirections, firstVerdict, houses, twoSystems } from './counted-day.ts'
import { launch, type Session } from './harness.ts'

let session: Session
let site: Site
beforeAll(async () => {
  site = await startSite()
})
afterAll(() => site?.close())
beforeEach(async () => {
  session = await launch()
})
afterEach(() => session?.close())

test('from the install to the first verdict: two clicks after the readings', async () => {
  const { before, readings, after } = await firstVerdict(await session.openPage('/popup.html'))
  expect([before.clicks, readings.clicks, after.clicks]).toEqual([1, 0, 2])
})

test('second, third and fourth house of a day: no click for the set-up, three acts a form', async () => {
  const all = await houses(session, site.plain, ['470', '410', '425'])
  for (const { setUp, readings, fill } of all) expect([setUp.clicks, readings.clicks, fill.clicks]).toEqual([0, 0, 3])
  // The form has the reading of its own house.
  expect(all.map(({ entered }) => /CFM at 50 Pa\t(\d+)/.exec(entered)?.[1])).toEqual(['470', '410', '425'])
})

test('two duct systems at rough-in to the verdict on their sum in a form: one click for the second', async () => {
  const { second, fill, entered } = await twoSystems(session, site.plain, bindSum)
  expect([second.clicks, fill.clicks]).toEqual([1, 3])
  expect(entered).toMatch(/Comments\tPass\tPass/)
})

test('both directions after ISO 9972 to their mean in the report: one click for the second, one for the report', async () => {
  const { second, report, said } = await bothDirections(session, await session.openPage('/popup.html'))
  expect([second.clicks, report.clicks]).toEqual([1, 1])
  expect(said).toMatch(/Before, both directions/i)
})
