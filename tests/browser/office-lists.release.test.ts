/** The office's lists: records by the day until which they are kept, and a thousand jobs with figure, verdict and status. */
import { afterEach, beforeEach, expect, it } from 'vitest'
import { violations } from './axe.ts'
import { launch, type Session, type Surface } from './harness.ts'
import { bundle } from './isolated.ts'
import { until } from './surface.ts'

let session: Session
let book: Surface

beforeEach(async () => {
  session = await launch()
  book = await session.openPage('/book.html#limits')
  const code = await bundle('../book/lists-in-page.ts', 'lists')
  await book.page.evaluate(`${code}; globalThis.lists = lists; undefined`)
})
afterEach(() => session.close())

const go = (to: string) => book.page.evaluate(`location.hash = ${JSON.stringify(to)}`)

it('reminds of records whose day has passed, lists them, and filters by it and by the date of test', async () => {
  await book.page.evaluate('lists.records()')
  await go('#entries')
  await book.wait(
    /1 record had to be kept until a day that has passed\. 1 record must be kept until a day within the next/,
  )
  await book.click('link', 'Show them')
  await book.wait(/2 of 6 entries shown/)
  expect(await book.text()).toMatch(/keep until Mar 1, 2025/)
  await book.page.click('details.further > summary')
  await book.choose('Keep the record until', 'the day has passed')
  await book.wait(/1 of 6 entries shown/)
  await book.choose('Keep the record until', 'not asked')
  await book.wait(/6 of 6 entries shown/)
})

it('shows a thousand jobs with figure, verdict, status and tester', async () => {
  await book.page.evaluate('lists.jobs(1000)')
  await go('#jobs')
  await book.wait(/100 of 1,000 jobs shown/)
  // The first row is the job typed in last.
  const cells = await until(async () => {
    const row = (await book.page.evaluate(
      `[...(document.querySelector('table.jobs tbody tr')?.querySelectorAll('th, td') ?? [])].slice(0, 8).map((cell) => cell.innerText.trim())`,
    )) as string[]
    return row[4] ? row : undefined
  }, 30_000)
  expect(cells?.join(' | ')).toMatch(
    /Tannery Row.*\| Ines Halvorsen\s+Bellwether.* \| ACH50 [\d.]+ after.* \| (meets|does not meet).* \| draft/s,
  )
  expect(await book.page.evaluate(`document.querySelectorAll('table.jobs thead th[scope=col]').length`)).toBe(9)
  await book.type('searchbox', 'Find', 'halvorsen 999')
  await book.wait(/1 of 1 job shown/)
  expect(await violations(book.page)).toEqual([])
})
