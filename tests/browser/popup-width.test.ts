/** The popup while it is typed into. */
import { expect, it } from 'vitest'
import { besideSite } from './beside-site.ts'

const at = besideSite()

it('its cells stay where they are when the figures make it longer than its window', async () => {
  const popup = await at.session.openPopup(await at.session.open(at.site.plain))
  await popup.click('button', 'Start a job')
  await popup.get('textbox', 'House pressure, point 1, Pa')
  const measure = () =>
    popup.page.evaluate(() => ({
      table: document.querySelector('.rd')!.getBoundingClientRect().width,
      long: document.documentElement.scrollHeight > innerHeight,
    }))
  // The cautions before the first reading may be longer than the window: they leave with the first key.
  await popup.page.type('[data-row="0"][data-column="pressure"]', '-50.4')
  await popup.page.waitForFunction(() => !document.querySelector('.care'))
  const before = await measure()
  await popup.page.type('[data-row="0"][data-column="flow"]', '812')
  await popup.wait(/CFM50/)
  await new Promise((done) => setTimeout(done, 500))
  expect([before.long, await measure()]).toEqual([false, { table: before.table, long: true }])
})
