/** What a receipt tells of a control that holds what was meant, while its page does not take it. */
import { expect, it } from 'vitest'
import { besideSite } from './beside-site.ts'
import { confirm, openDemo } from './round.ts'

const at = besideSite()

it('an entered line says what the page says against it', async () => {
  const page = await at.session.open(at.site.plain)
  const popup = await openDemo(at.session, page)
  await popup.click('button', 'after')
  await popup.click('button', 'Map this page')
  const ui = await at.session.helper(page)
  await ui.click('button', 'Propose for all')
  await ui.click('button', /^Bind these [1-9]/)
  await ui.click('button', 'Show the plan')
  // The constraint validation of HTML: what a page says by it is in `validationMessage`.
  await page.evaluate(() => {
    for (const input of document.querySelectorAll('input')) input.setCustomValidity('Not in the register.')
  })
  await confirm(ui)
  const lines = (await ui.rows()).filter((cells) =>
    cells.some((cell) => /the page says: Not in the register\./.test(cell)),
  )
  expect(lines.length).toBeGreaterThan(0)
  for (const cells of lines) expect(cells.at(-1)).toMatch(/^entered$/)
  await page.close()
})
