/** Going from one page of the extension to another. */
import browser from 'webextension-polyfill'
import { closeUnended } from '../../book/fills.ts'
import { saveSettings } from '../../book/settings.ts'
import { underWayIn } from '../../book/under-way.ts'

/** Shows the book, at an entry if one is named; uses the tab that has it open already. */
export async function openBook(entry?: number): Promise<void> {
  await show(browser.runtime.getURL('/book.html'), entry === undefined ? '' : `#entry-${entry}`)
}

/** Opens a job in the calculator, in a tab. */
export async function openCalculator(job: string): Promise<void> {
  await saveSettings({ current: { job, test: '' } })
  await browser.tabs.create({ url: browser.runtime.getURL('/popup.html') })
}

async function show(page: string, hash: string): Promise<void> {
  const [open] = await browser.tabs.query({ url: `${page}*` })
  if (open?.id === undefined) {
    await browser.tabs.create({ url: page + hash })
    return
  }
  await browser.tabs.update(open.id, { active: true, ...(hash && { url: page + hash }) })
  if (open.windowId !== undefined) await browser.windows.update(open.windowId, { focused: true })
}

/** Makes entries of the fills whose page is gone. */
export async function closeAbandoned(): Promise<void> {
  const tabs = await browser.tabs.query({})
  await closeUnended(underWayIn(new Set(tabs.flatMap(({ id }) => id ?? []))))
}
