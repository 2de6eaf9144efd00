/** The book page as a person uses it: what became of a fill, a photo, an encrypted backup, a review there and back. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { launch, type Session, type Surface } from './harness.ts'
import { bundle } from './isolated.ts'
import { until } from './surface.ts'

let session: Session
let book: Surface
let folder: string
const passphrase = 'seven grey herons wade'

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'book-'))
  session = await launch()
  book = await session.openPage('/book.html#limits')
  const code = await bundle('../book/in-page.ts', 'inPage')
  await book.page.evaluate(`${code}; inPage.write()`)
  const client = await book.page.createCDPSession()
  await client.send('Page.setDownloadBehavior', { behavior: 'allow', downloadPath: folder })
})
afterEach(async () => {
  await session.close()
  rmSync(folder, { recursive: true, force: true })
})

const go = (to: string) => book.page.evaluate(`location.hash = ${JSON.stringify(to)}`)

async function downloaded(part: string): Promise<string> {
  const file = await until(async () =>
    readdirSync(folder).find((name) => name.includes(part) && !name.endsWith('.crdownload')),
  )
  if (file === undefined) throw new Error(`No file ${part} was handed out.`)
  return join(folder, file)
}

async function choose(selector: string, file: string): Promise<void> {
  const input = await book.page.waitForSelector(selector)
  await (input as unknown as { uploadFile: (path: string) => Promise<void> }).uploadFile(file)
}

it('notes what became of a fill, keeps a photo, and refuses what is none', async () => {
  await go('#entry-1')
  await book.click('button', 'Note what became of it')
  await book.choose('What became of it', 'rejected')
  await book.click('button', 'Add to the book')
  await book.wait(/Not done: type the reason that the office gave/)
  await book.type('textbox', 'Reason of the rejection', 'No photo of the gauge')
  await book.type('textbox', 'Confirmation number', 'LC-88213')
  await book.click('button', 'Add to the book')
  await book.wait(/Follow-up, entry 2[\s\S]*rejected, number LC-88213/)

  const [none, photo] = [join(folder, 'none.png'), join(folder, 'gauge.png')]
  writeFileSync(none, 'text')
  const dot = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=='
  writeFileSync(photo, Buffer.from(dot, 'base64'))
  await choose('.notes input[type=file]', none)
  await book.wait(/none\.png is not a photo/)
  await choose('.notes input[type=file]', photo)
  await book.wait(/gauge\.png was attached/)
  await book.click('button', /^Look at it/)
  await book.get('image', 'Attached photo gauge.png')
  expect(await book.wait(/Chain verified[\s\S]*3 entries/)).toMatch(/rejected/)
})

it('hands out the whole book, and none when it is stopped', async () => {
  await go('#entries')
  // The file waits in the middle, however fast the machine is.
  await book.page.evaluate(`
    const digest = crypto.subtle.digest.bind(crypto.subtle)
    const waiting = new Promise((resolve) => { globalThis.goOn = resolve })
    crypto.subtle.digest = async (...of) => { await waiting; return digest(...of) }`)
  await (await book.page.waitForSelector('.menu:not(.further) > summary'))!.click()
  await book.click('button', 'Whole book (JSON)')
  await book.wait(/of 1 entries are written/)
  await book.click('button', 'Stop')
  await book.page.evaluate('goOn()')
  await book.wait(/Stopped\. No file was written\./)
  expect(readdirSync(folder)).toEqual([])
  await book.click('button', 'Whole book (JSON)')
  expect(readFileSync(await downloaded('book'), 'utf8')).toContain('"end":{"count":')
})

it('writes a backup that opens with its passphrase only, and shows every text as text', async () => {
  await go('#settings')
  await book.type('textbox', 'Passphrase of the backup', passphrase)
  await book.type('textbox', 'The same once more', passphrase)
  await book.click('button', 'Write the backup')
  const file = await downloaded('backup')
  await choose('section input[type=file]', file)
  await book.type('textbox', 'Passphrase', 'another one entirely')
  await book.click('button', 'Open it')
  await book.wait(/The passphrase does not open this file/)
  await book.type('textbox', 'Passphrase', passphrase)
  await book.click('button', 'Open it')
  await book.wait(/1 entry is here already/)
  await go('#entry-1')
  await book.wait(/<img src=x onerror/)
  expect(await book.page.evaluate('globalThis.hacked')).toBeUndefined()
})

it('makes a review file whose figures are reproduced, and takes findings back', async () => {
  await go('#jobs')
  await book.click('button', /^Review file/)
  const file = await downloaded('review')
  await go('#review')
  await choose('main input[type=file]', file)
  await book.wait(/(\d+) of \1 figures reproduced[\s\S]*1 of 1 entries fit the chain/)
  await book.type('textbox', 'Reviewer', 'County desk')
  await book.click('button', 'Add a finding')
  await book.type('textbox', 'Finding 1', 'Show the gauge at 50 Pa')
  await book.type('textbox', 'Re-test, ACH50, after', '3.9')
  await book.wait(/fault/)
  await book.click('button', 'Save the file to send back')
  await choose('main input[type=file]', await downloaded('reviewed'))
  await book.click('button', 'Add this review to my book')
  await book.wait(/The review was added to your book/)
  await go('#entry-2')
  expect(await book.wait(/County desk found this:/)).toContain('Show the gauge at 50 Pa')
})

it('puts back a range of a device that was deleted, and keeps what was typed since', async () => {
  await go('#devices')
  await book.click('button', 'Add a device')
  await book.type('textbox', 'Range, range 1', 'wide')
  await book.type('textbox', 'Coefficient, range 1', '230')
  await book.click('button', 'Delete range wide')
  await book.wait(/Range wide deleted/)
  await book.type('textbox', 'Serial number', '31')
  await book.click('button', 'Put it back')
  await book.get('button', 'Delete range wide')
  expect(await book.value('textbox', 'Coefficient, range 1')).toBe('230')
  expect(await book.value('textbox', 'Serial number')).toBe('31')
})
