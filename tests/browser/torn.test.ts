/** A sample of the soak of torn writes; and what the person sees of one. */
import { existsSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { generator } from '../random.ts'
import { tearing } from '../soak/torn.ts'
import { startSite, type Site } from '../pages/site/server.ts'
import { launch, type Session } from './harness.ts'
import { bundle } from './isolated.ts'

let session: Session
let site: Site

beforeEach(async () => {
  site = await startSite()
  session = await launch()
})
afterEach(async () => {
  await session.close()
  await site.close()
})

it('loses no entry, and nothing without a word, when the browser is killed while it saves and its log is torn', async () => {
  const { lost, silent, broken, older, cuts, emptied } = await tearing(session, 4, 3, generator(7))
  expect({ lost, silent, broken, older }).toEqual({ lost: [], silent: 0, broken: 0, older: 0 })
  expect(cuts).toBe(3)
  expect(emptied, 'the browser deletes a torn database').toBeGreaterThan(0)
}, 400_000)

/** Deletes the database as the browser does that finds it damaged. */
function loseDatabase(): void {
  const folder = join(session.profile, 'Default', 'IndexedDB', `chrome-extension_${session.id}_0.indexeddb.leveldb`)
  expect(existsSync(folder)).toBe(true)
  rmSync(folder, { recursive: true })
}

it('tells in popup and book what was given back, until it was read', async () => {
  const popup = await session.openPopup(await session.open(site.plain))
  await popup.click('button', 'Start a job')
  await popup.type('textbox', 'House pressure, point 1, Pa', '-50.3')
  await popup.wait(/kept \d/)
  const book = await session.openPage('/book.html#entries')
  await book.page.evaluate(`${await bundle('../book/in-page.ts', 'made')}; made.write()`)
  await session.restart(loseDatabase)

  const again = await session.openPopup(await session.open(site.plain))
  await again.wait(
    /The browser lost a part of the book\. This book held 1 entry, 0 were here: the second copy gave back 1\./,
  )
  expect(await again.value('textbox', 'House pressure, point 1, Pa')).toBe('-50.3')

  const shown = await session.openPage('/book.html#entries')
  await shown.wait(/The browser lost a part of the book/)
  await shown.wait(/Chain verified/)
  await shown.wait(/14 Tannery Row, Marrowby/)
  await shown.click('button', 'I have read this')
  await shown.wait(/^(?!.*The browser lost)/s)
  const later = await session.openPage('/book.html#entries')
  await later.wait(/Chain verified/)
  expect(await later.text()).not.toMatch(/The browser lost/)
})
