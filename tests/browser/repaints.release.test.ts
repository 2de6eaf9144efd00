/** Repainting in Chromium, and a page that hears of copies. */
import { expect, test } from 'vitest'
import { launch } from './harness.ts'
import { repaints } from './repaints.ts'

const attacked = repaints(launch)

test('takes copies for its own: it hears of none, and the text that was copied is the one that was shown', async () => {
  const page = await attacked.visit('copies')
  await page.browserContext().overridePermissions(new URL(page.url()).origin, ['clipboard-read', 'clipboard-write'])
  const ui = await attacked.plan(page)
  await ui.click('button', 'Copy list')
  await ui.click('button', /^Copy .*CFM50/)
  await ui.wait(/Copied/i)
  expect(await page.evaluate('copied')).toBe(0)
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe('754')
})
