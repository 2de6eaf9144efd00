import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { startSite, type Site } from '../pages/site/server.ts'
import { launch, type Session } from './harness.ts'
import { englishIn, expectTexts } from './in-words.ts'
import { formOf } from './round.ts'

const english = englishIn('es')

let site: Site
let session: Session

beforeAll(async () => {
  site = await startSite()
  session = await launch({ language: 'es' })
})
afterAll(async () => {
  await session.close()
  await site.close()
})

describe('in a browser that speaks Spanish', () => {
  it('the popup and the helper do too', async () => {
    const page = await session.open(formOf(site, 'plain').url)
    const popup = await session.openPopup(page)
    await popup.click('button', 'Abrir el trabajo de ejemplo')
    await popup.wait(/Cumple el límite/)
    const calculator = await popup.text()
    expect(calculator).toMatch(/Verificaciones/)
    expect(calculator).toMatch(/presurización/)
    // Numbers as Spanish writes them; the demo's own leave no doubt.
    expect(calculator).toMatch(/96 % de probabilidad por debajo de 4,0/)
    expect(calculator).not.toMatch(/dos modos/)
    expect(english(calculator)).toEqual([])
    // Limits to choose from, and what a cell left empty is taken for.
    await popup.fold('setup')
    await popup.wait(/1\.500 ft²|8,0 cfm25/)
    expect(await popup.text()).not.toMatch(/\d\.\d+ (?:ACH50|cfm\d+)|\d,\d{3} ft/)
    expect(
      await popup.page.$$eval('[placeholder]', (all) => all.map((box) => (box as HTMLInputElement).placeholder)),
    ).toEqual(expect.arrayContaining(['0,6', '0,25']))
    await popup.click('button', 'Asignar esta página')
    const helper = await session.helper(page)
    await helper.wait(/campos vinculados/)
    const mapping = await helper.text()
    expect(mapping).toMatch(/Elija un campo/)
    expect(english(mapping)).toEqual([])
    await page.close()
  })

  it('the book does too, and no text is empty', async () => {
    const book = await session.openPage('/book.html')
    await book.wait(/Aún no hay entradas/)
    const report = await session.openPage('/book.html#report?job=demo-job&test=demo-after')
    await report.wait(/Prueba: después\./)
    expect(await report.text()).not.toMatch(/kg\/m3|\b(?:before|after|duct system|points?)\b/)
    // 753.7 cfm ± 5.33 %, the whole budget without the size of the building.
    expect(await report.has('image', /: 3 puntos, .* A 50 Pa 754, 714 a 794 cfm/)).toBe(true)
    await report.close()
    expect(english(await book.text())).toEqual([])
    await book.page.setViewport({ width: 1100, height: 600 })
    const [sections, chain] = await book.page.$$eval('.top nav, .top .chain', (parts) =>
      parts.map((part) => part.getBoundingClientRect()).map(({ top, bottom }) => ({ top, bottom })),
    )
    expect(chain!.top, 'the chain stands beside the sections').toBeLessThan(sections!.bottom)
    await expectTexts(book, 'es')
    await book.close()
  })
})
