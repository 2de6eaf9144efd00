/** What is typed into a form of the book and not sent off yet survives a kill, and looking elsewhere. */
import { afterEach, beforeEach, expect, it } from 'vitest'
import { launch, type Session } from './harness.ts'
import { bundle } from './isolated.ts'
import { until, type Surface } from './surface.ts'

let session: Session

beforeEach(async () => {
  session = await launch()
  const { page } = await session.openPage('/book.html#limits')
  await page.evaluate(`${await bundle('../book/in-page.ts', 'made')}; made.write()`)
})
afterEach(() => session.close())

/** What stands in a field once it stands there. */
const holds = (book: Surface, name: string, text: string) =>
  until(async () => ((await book.value('textbox', name).catch(() => '')) === text ? text : undefined))

/** Waits until the browser has taken what was typed last. */
const kept = (book: Surface, text: string) =>
  until(async () => {
    const all = await book.page.evaluate('chrome.storage.local.get(null)')
    return JSON.stringify(all).includes(text) ? text : undefined
  })

it('a correction and what became of a submission', async () => {
  const book = await session.openPage('/book.html#entry-1')
  await book.click('button', 'Correct it')
  await book.type('textbox', 'What is wrong, and why', 'The volume was read off the old plans')
  await book.type('textbox', 'What is right', '15790')
  expect(await kept(book, '15790')).toBe('15790')
  await session.restart()

  const again = await session.openPage('/book.html#entry-1')
  expect(await holds(again, 'What is right', '15790')).toBe('15790')
  expect(await again.value('textbox', 'What is wrong, and why')).toBe('The volume was read off the old plans')
  // Looking elsewhere and back.
  await again.page.evaluate('location.hash = "#limits"')
  await again.wait(/Limits of your own/)
  await again.page.evaluate('location.hash = "#entry-1"')
  expect(await holds(again, 'What is right', '15790')).toBe('15790')
  await again.click('button', 'Add the correction')
  await again.wait(/its correction is a new entry/)
  await again.page.reload()
  await again.wait(/Note what became of it/)

  await again.click('button', 'Note what became of it')
  await again.type('textbox', 'Confirmation number', 'LC-88120')
  expect(await kept(again, 'LC-88120')).toBe('LC-88120')
  await session.restart()
  const third = await session.openPage('/book.html#entry-1')
  expect(await holds(third, 'Confirmation number', 'LC-88120')).toBe('LC-88120')
  // Who leaves a form has left it.
  await third.click('button', 'Leave it')
  await third.page.reload()
  await third.wait(/Note what became of it/)
})

it('a setting, to its last key, where the page is loaded anew at once', async () => {
  const book = await session.openPage('/book.html#settings')
  await book.type('textbox', 'Company', 'Bellwether Lane Testing')
  // The last key and the reload in one task: nothing that was asked of the book has been answered.
  await book.page.evaluate(`
    const field = [...document.querySelectorAll('.fld')].find((one) => one.textContent.startsWith('Company')).querySelector('input')
    field.value += '!'
    field.dispatchEvent(new InputEvent('input', { bubbles: true }))
    location.reload()`)
  const again = await session.openPage('/book.html#settings')
  expect(await holds(again, 'Company', 'Bellwether Lane Testing!')).toBe('Bellwether Lane Testing!')
})

it('a limit of one’s own', async () => {
  const book = await session.openPage('/book.html#limits')
  await book.click('button', 'Add a limit')
  await book.type('textbox', 'Name', 'Permit MB-2026-031')
  await book.type('textbox', 'Where it stands', 'letter of 3 March')
  expect(await kept(book, 'letter of 3 March')).toBe('letter of 3 March')
  await session.restart()

  const again = await session.openPage('/book.html#limits')
  expect(await holds(again, 'Name', 'Permit MB-2026-031')).toBe('Permit MB-2026-031')
  expect(await again.value('textbox', 'Where it stands')).toBe('letter of 3 March')
  await again.type('textbox', 'Limit', '2.5')
  await again.click('button', 'Keep it')
  await again.wait(/Permit MB-2026-031 .* at most 2\.5/)
  await again.page.reload()
  await again.wait(/Permit MB-2026-031 .* at most 2\.5/)
  await again.wait(/Add a limit/)
})
