/** Going from one page of the extension to another. */
import browser from 'webextension-polyfill'
import { closeUnended } from '../book/fills.ts'
import { saveSettings } from '../book/settings.ts'
import { underWayIn } from '../book/under-way.ts'

const channelName = 'gapsum-book-tab'

/** So long an open book has to say that it is there. */
const patience = 250

type Here = { tab: number; window: number | undefined }

/** Shows the book, at an entry if one is named; uses the tab that has it open already. */
export async function openBook(entry?: number): Promise<void> {
  const page = browser.runtime.getURL('/book.html')
  const hash = entry === undefined ? '' : `#entry-${entry}`
  const here = await whereIsBook()
  if (!here) {
    await browser.tabs.create({ url: page + hash })
    return
  }
  await browser.tabs.update(here.tab, { active: true, ...(hash && { url: page + hash }) })
  if (here.window !== undefined) await browser.windows.update(here.window, { focused: true })
}

/** Shows where the person allows frames of a site, or takes that back. */
export async function openSites(origin: string): Promise<void> {
  const query = new URLSearchParams({ site: origin })
  await browser.tabs.create({ url: `${browser.runtime.getURL('/book.html')}#settings?${query}` })
}

/** Asks open books for their tab: without the permission to read addresses, tabs cannot be searched in every browser. */
function whereIsBook(): Promise<Here | undefined> {
  const channel = new BroadcastChannel(channelName)
  return new Promise((resolve) => {
    const end = (here?: Here) => {
      clearTimeout(timer)
      channel.close()
      resolve(here)
    }
    const timer = setTimeout(end, patience)
    channel.addEventListener('message', ({ data }: MessageEvent<Here | 'where'>) => data !== 'where' && end(data))
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a BroadcastChannel has no target origin
    channel.postMessage('where')
  })
}

/** Lets `openBook` find this book. */
export function answerWhere(): void {
  const channel = new BroadcastChannel(channelName)
  const say = async () => {
    const tab = await browser.tabs.getCurrent()
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a BroadcastChannel has no target origin
    if (tab?.id !== undefined) channel.postMessage({ tab: tab.id, window: tab.windowId } satisfies Here)
  }
  channel.addEventListener('message', ({ data }) => {
    if (data === 'where') void say()
  })
}

/** Opens a job in the calculator, in a tab. */
export async function openCalculator(job: string): Promise<void> {
  await saveSettings({ current: { job, test: '' } })
  await browser.tabs.create({ url: browser.runtime.getURL('/popup.html') })
}

/** Makes entries of the fills whose page is gone. */
export async function closeAbandoned(): Promise<void> {
  const tabs = await browser.tabs.query({})
  await closeUnended(underWayIn(new Set(tabs.flatMap(({ id }) => id ?? []))))
}
