/** What a person does faster than the machine answers: no key is lost, and nothing is done twice. */
import { afterEach, beforeEach, expect, it } from 'vitest'
import { launch, type Session, type Surface } from './harness.ts'
import { bundle } from './isolated.ts'

let session: Session
beforeEach(async () => {
  session = await launch()
})
afterEach(() => session.close())

const moment = (surface: Surface) => surface.page.evaluate('new Promise((resolve) => setTimeout(resolve, 500))')

/** Presses a key of the page three times before anything can answer. */
async function pressAtOnce(surface: Surface, selector: string): Promise<void> {
  await surface.page.waitForSelector(selector)
  await surface.page.$eval(selector, (key) => {
    for (let presses = 0; presses < 3; presses++) (key as HTMLElement).click()
  })
}

it('begins one job, however often the key is pressed', async () => {
  const calculator = await session.openPage('/popup.html')
  await pressAtOnce(calculator, 'xpath/.//button[text()="Start a job"]')
  await calculator.wait(/Readings/)
  await moment(calculator)
  const book = await session.openPage('/book.html#jobs')
  await book.wait(/jobs? shown/)
  expect(await book.page.evaluate(`document.querySelectorAll('tbody tr').length`)).toBe(1)
})

it('keeps every reading of a page that closes while a slow machine still saves the first key', async () => {
  const { page } = await session.openPage('/popup.html')
  await (await page.waitForSelector('xpath/.//button[text()="Start a job"]'))?.click()
  await (await page.waitForSelector('[data-column="pressure"]'))?.click()
  await (await page.createCDPSession()).send('Emulation.setCPUThrottlingRate', { rate: 8 })
  const { keyboard } = page
  const presses: Promise<void>[] = []
  for (const pressure of [50, 45, 40, 35, 30]) {
    for (const key of String(pressure)) presses.push(keyboard.press(key as '0'))
    presses.push(keyboard.press('Tab'))
    for (const key of String(1000 + pressure)) presses.push(keyboard.press(key as '0'))
    // To the next row, and back to its first cell.
    presses.push(keyboard.press('Enter'), keyboard.down('Shift'), keyboard.press('Tab'), keyboard.up('Shift'))
  }
  await Promise.all(presses)
  // oxlint-disable-next-line unicorn/consistent-function-scoping -- runs in the page
  const typed = () =>
    [...document.querySelectorAll<HTMLInputElement>('.rd input[data-row]')]
      .map(({ value }) => value)
      .join(' ')
      .trim()
  const before = await page.evaluate(typed)
  expect(before).toMatch(/^50 1050 .*30 1030$/)
  await page.close()
  const again = await session.openPage('/popup.html')
  await again.page.waitForSelector('[data-column="pressure"]')
  expect(await again.page.evaluate(typed)).toBe(before)
})

it('leaves the focus where the person put it as soon as a panel stood there', async () => {
  const calculator = await session.openPage('/popup.html')
  await calculator.click('button', 'Start a job')
  await calculator.wait(/Readings/)
  await calculator.page.evaluate(() => {
    // Before the next frame is drawn, as on a machine that draws few of them.
    const observer = new MutationObserver(() => {
      const role = document.querySelector<HTMLElement>('form.panel input')
      if (!role) return
      observer.disconnect()
      role.focus()
    })
    observer.observe(document.body, { childList: true, subtree: true })
  })
  await calculator.click('button', 'Add a test')
  await calculator.page.waitForSelector('form.panel')
  await moment(calculator)
  expect(await calculator.page.evaluate('document.activeElement.localName')).toBe('input')
})

it('adds a note once, however often the key is pressed', async () => {
  const book = await session.openPage('/book.html#limits')
  await book.page.evaluate(`${await bundle('../book/in-page.ts', 'inPage')}; inPage.write()`)
  await book.page.evaluate(`location.hash = '#entry-1'`)
  await book.click('button', 'Note what became of it')
  await pressAtOnce(book, 'form.sheet [type=submit]')
  await book.wait(/Follow-up, entry 2/)
  await moment(book)
  expect(await book.page.evaluate('document.body.innerText.match(/Follow-up, entry/g).length')).toBe(1)
})

it('keeps every key of the tester’s fields', async () => {
  const book = await session.openPage('/book.html#settings')
  const fields = 'xpath/.//h2[text()="Tester"]/..//input'
  await (await book.page.waitForSelector(fields))?.click()
  const keys = [...'Ines Halvorsen', 'Tab', ...'Bellwether Lane Testing'] as 'a'[]
  await Promise.all(keys.map((key) => book.page.keyboard.press(key)))
  const shown = () =>
    book.page.$$eval(fields, (all) => all.slice(0, 2).map((field) => (field as HTMLInputElement).value))
  const typed = ['Ines Halvorsen', 'Bellwether Lane Testing']
  expect(await shown()).toEqual(typed)
  await moment(book)
  expect(await shown()).toEqual(typed)
  await book.page.reload()
  await book.page.waitForSelector(fields)
  expect(await shown()).toEqual(typed)
})
