/** Popup, helper and practice form in a browser of another language: its words, its numbers, and a fill by proposals alone. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { read } from '../../lib/words/collect.ts'
import { keyOf, termKeyOf } from '../../lib/words/key.ts'
import { launch, type Session } from './harness.ts'
import { englishIn, expectTexts } from './in-words.ts'

// Marks: Unicode CLDR. The demo's limits of 4.0 are written with a comma in both.
describe.each(['fr', 'de'])('in a browser that speaks %s', (language) => {
  const words = read(language)
  const english = englishIn(language)
  const said = (text: string): string => {
    const found = words[keyOf(text)]?.message
    if (!found) throw new Error(`“${text}” is no text of the sources, or has no ${language}.`)
    return found
  }
  /** A text with values as a pattern. */
  const like = (text: string) =>
    new RegExp(
      `^${said(text)
        .replaceAll(/[.*+?^{}()|[\]\\]/g, '\\$&')
        .replaceAll(/\$\d/g, '.+')}$`,
    )

  let session: Session
  beforeAll(async () => {
    session = await launch({ language })
  })
  afterAll(() => session.close())

  test('the popup and the helper speak it, and the practice form is filled by proposals alone', async () => {
    const page = await session.open(`chrome-extension://${session.id}/practice.html`)
    const popup = await session.openPopup(page)
    await popup.click('button', said('Open the demo job'))
    await popup.wait(/4,0 cfm/)
    await popup.click('button', words[termKeyOf('after')]?.message)
    await popup.wait(/ACH50[^\n]*3,0|3,0 ACH50/)
    const calculator = await popup.text()
    expect(english(calculator)).toEqual([])
    expect(calculator).not.toMatch(/\d\.\d+ (?:ACH50|cfm\d+)/)
    await popup.click('button', said('Map this page'))

    const helper = await session.helper(page)
    await helper.click('button', said('Propose for all'))
    await helper.click('button', like('Bind these $1'))
    expect(english(await helper.text())).toEqual([])
    await helper.click('button', said('Show the plan'))
    await helper.click('button', like('Fill $1'))
    await helper.wait(new RegExp(said('Open book')))
    expect(english(await helper.text())).toEqual([])
    const held = await page.$$eval('input, select, textarea', (boxes) =>
      Object.fromEntries(
        boxes
          .filter((box) => box.type !== 'radio' || (box as HTMLInputElement).checked)
          .map((box) => [box.name, box.type === 'checkbox' ? (box as HTMLInputElement).checked : box.value]),
      ),
    )
    expect(held).toMatchObject({
      street: expect.stringContaining('14 Tannery Row'),
      permit: 'MB-2025-1183',
      volume: '15810',
      area: '1860',
      date: '2026-02-11',
      cfm50: '754',
      ach50: expect.stringMatching(/^2[.,]86$/),
      direction: said('Depressurization'),
      outcome: 'pass',
      tester: 'Ines Halvorsen',
      certify: false,
    })
    await page.close()
  })

  test('the book speaks it, and no text is empty', async () => {
    const report = await session.openPage('/book.html#report?job=demo-job&test=demo-after')
    await report.wait(/Tannery Row/)
    expect(english(await report.text())).toEqual([])
    expect(await report.text()).not.toMatch(/\b(?:before|after|duct system)\b/)
    await expectTexts(report, language)
    await report.close()
  })
})
