/** A book of another beside one's own: taken in from its file by keyboard, listed, found, read, and never written to. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { sealedFile, type Item } from '../../lib/book/sealed.ts'
import { manyEntries } from '../book/many.ts'
import { fakeDevice } from '../book/fake.ts'
import { violations } from './axe.ts'
import { launch, type Session, type Surface } from './harness.ts'
import { bundle } from './isolated.ts'

let session: Session
let book: Surface
let folder: string

async function begin(language: string): Promise<void> {
  session = await launch({ language })
  book = await session.openPage('/book.html#limits')
  const code = await bundle('../book/in-page.ts', 'inPage')
  await book.page.evaluate(`${code}; globalThis.inPage = inPage; inPage.write()`)
}

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'beside-'))
})
afterEach(async () => {
  await session.close()
  rmSync(folder, { recursive: true, force: true })
})

const go = (to: string) => book.page.evaluate(`location.hash = ${JSON.stringify(to)}`)

/** The file of a book with so many entries, as a browser elsewhere writes it. */
async function fileOf(size: number, name: string): Promise<string> {
  async function* items(): AsyncGenerator<Item> {
    yield { kind: 'head', value: { format: 'gapsum-book', version: 2, exported: '2026-03-01T10:00:00.000Z' } }
    for await (const entries of manyEntries(size)) for (const value of entries) yield { kind: 'entry', value }
  }
  const path = join(folder, name)
  writeFileSync(path, (await Array.fromAsync(sealedFile(items()))).join(''))
  return path
}

/** The file of a device that is here with another coefficient. */
async function fileOfDevice(name: string): Promise<string> {
  const items: Item[] = [
    { kind: 'head', value: { format: 'gapsum-book', version: 2, exported: '2026-03-01T10:00:00.000Z' } },
    {
      kind: 'device',
      value: fakeDevice({ ranges: fakeDevice().ranges.map((range) => Object.assign(range, { coefficient: '181' })) }),
    },
  ]
  const path = join(folder, name)
  writeFileSync(path, (await Array.fromAsync(sealedFile(items))).join(''))
  return path
}

async function choose(label: string, path: string): Promise<void> {
  const input = await book.page.waitForSelector(`::-p-xpath(//label[contains(., '${label}')]/input[@type='file'])`)
  await (input as unknown as { uploadFile: (path: string) => Promise<void> }).uploadFile(path)
}

it('is taken in by keyboard, listed and searched with one’s own, read, verified, and brought up to date', async () => {
  await begin('en-US')
  await go('#settings')
  await book.wait(/Take in a file/)
  await choose('Choose a file', await fileOf(3, 'Second van.json'))
  await book.wait(/These are 3 entries of another book, .* They are kept beside yours, to be read/)
  expect(await book.value('textbox', 'What you call this book')).toBe('Second van')
  await book.get('checkbox', 'Keep this book beside yours')
  await book.page.evaluate(`document.querySelector('.plan input[type=checkbox]').focus()`)
  expect(await book.focused()).toMatchObject({ name: 'Keep this book beside yours' })
  // Off and on again by keyboard; then on to the name and to the button.
  await book.key('Space')
  await book.key('Space')
  await book.key('Tab')
  await book.key('Tab')
  await book.key('Enter')
  await book.wait(/Second van\.json was taken in\./)
  await book.wait(/Books beside yours/)

  await go('#entries')
  await book.wait(/4 of 4 entries shown/)
  await book.wait(/Chain verified 1 entry, [\s\S]*and 1 book beside/)
  expect((await book.text()).match(/Second van/g)?.length).toBeGreaterThanOrEqual(3)
  await book.choose('Book', 'Second van')
  await book.wait(/3 of 4 entries shown/)
  await book.choose('Book', 'any')
  await book.type('searchbox', 'Find', 'apply/2/part-c')
  await book.wait(/1 of 4 entries shown/)
  await book.click('button', /^Entry 2,/)
  await book.wait(/Second van, kept beside yours and only to be read/)
  expect(await book.text()).toMatch(/taken in from Second van\.json on/)
  expect(await book.has('button', 'Correct it')).toBe(false)
  expect(await book.has('button', 'Note what became of it')).toBe(false)

  // The same book, longer: only the new entry is added.
  await go('#settings')
  await choose('Choose a file', await fileOf(4, 'Second van later.json'))
  await book.wait(/Second van is here beside yours with 3 entries: 1 more will be added to it\./)
  await book.click('button', 'Add them')
  await book.wait(/Second van later\.json was taken in\./)
  await book.click('button', /Check its chain/)
  await book.wait(/The chain of Second van fits: 4 entries\./)

  // A device that is here with another coefficient is compared, taken by keyboard, and put back.
  await book.page.evaluate('inPage.device()')
  await choose('Choose a file', await fileOfDevice('Office.json'))
  await book.wait(/Here with other content: Device Fan in the van\. Compare the two below, and choose one\./)
  await book.get('table', 'Device Fan in the van: what differs')
  expect(await book.text()).toMatch(/Range wide: coefficient\s+180\s+181/)
  expect(await violations(book.page)).toEqual([])
  await book.page.evaluate(`document.querySelector('.differing input[type=radio]').focus()`)
  expect(await book.focused()).toMatchObject({ name: 'Keep yours' })
  await book.key('ArrowDown')
  await book.wait(/Entries that are sealed stay as they are\./)
  await book.key('Tab')
  await book.key('Enter')
  await book.wait(/Office\.json was taken in\. Taken from the file: Device Fan in the van\./)
  expect(await book.page.evaluate('inPage.coefficient()')).toBe('181')
  await book.click('button', 'Put yours back')
  await book.wait(/Put back as yours: Device Fan in the van\./)
  expect(await book.page.evaluate('inPage.coefficient()')).toBe('180')
})

it('speaks Spanish', async () => {
  await begin('es')
  await go('#settings')
  await choose('Elegir un archivo', await fileOf(3, 'Furgoneta.json'))
  await book.wait(/Son 3 entradas de otro libro, .* Se guardan junto al suyo, para leerlas/)
  await book.click('button', 'Añadirlos')
  await book.wait(/Libros junto al suyo/)
  await go('#entries')
  // The chain is read again while the list is: both stand there in the end, above each other.
  expect(await book.wait(/y 1 libro al lado[^]*4 de 4 entradas a la vista/)).toMatch(/Furgoneta/)
})
