/** A set of limits of one's own: begun from an edition, changed, and judged by in the popup. */
import { expect, test } from 'vitest'
import { besideSite } from './beside-site.ts'
import { openDemo } from './round.ts'

const at = besideSite()

test('a local code that differs from its edition decides the verdict, and the report names it', async () => {
  const book = await at.session.openPage('/book.html#limits')
  await book.click('button', 'Begin a set from an edition')
  await book.choose('Begin with the limits of', 'IECC 2021')
  await book.type('textbox', 'Name of the set', 'Larch County 2026')
  await book.click('button', 'Copy its limits')
  await book.wait(/Larch County 2026: the limits of IECC 2021 were copied/)

  // The demo opens on its ducts, whose 2.9 cfm per 100 ft2 meet the 4 of the edition.
  await book.click('button', /^Change ducts, finished, total$/)
  await book.type('textbox', 'Limit', '1.5')
  await book.type('textbox', 'Where it stands', 'Ordinance 12, 2026')
  await book.click('button', 'Keep it')
  await book.wait(/ducts, .* at most 1\.5 cfm/)

  const popup = await openDemo(at.session, await at.session.open(at.site.plain))
  if (!(await popup.page.$eval('#setup', (section) => section.hasAttribute('open')))) await popup.fold('setup')
  await popup.choose('Limit', /^Larch County 2026: ducts, finished, total/)
  const said = await popup.wait(/Does not meet the limit/)
  expect(said).toMatch(/Larch County 2026, ducts, finished, total, Ordinance 12, 2026/)
  await popup.close()
  await book.close()
})
