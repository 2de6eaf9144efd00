/** The page in the active tab, and which form maps fit it. */
import { listMaps } from '../book/maps.ts'
import { subscribe } from '../book/notice.ts'
import { serves } from '../form/map/address.ts'
import type { FormMap } from '../form/schema.ts'
import { browser } from '../browser.ts'
import { isOwnForm } from './practice.ts'
import { say } from '../words/say.ts'

export interface ActivePage {
  tab: number
  window: number
  /** Empty when the browser does not tell the address. */
  url: string
  maps: FormMap[]
  /** Form maps of other pages of the same site: this page may be a further step of one of them. */
  near: FormMap[]
  /** Why the helper cannot work there; empty when it can. */
  barred: string
}

const stores = new Set([
  'chromewebstore.google.com',
  'chrome.google.com',
  'addons.mozilla.org',
  'microsoftedge.microsoft.com',
])

/** Why a browser lets no extension into a page of this address; empty when it does. */
export function whyBarred(url: string): string {
  if (url === '' || isOwnForm(url)) return ''
  let address: URL
  try {
    address = new URL(url)
  } catch {
    return say`This tab has no page to fill.`
  }
  if (/\.pdf$/i.test(address.pathname)) {
    return say`The browser lets no extension into its view of a PDF: save the file, then choose it at “Open a PDF form”.`
  }
  if (address.protocol === 'file:') {
    return say`A file can be filled once you allow access to file addresses in the browser’s extension settings.`
  }
  if (address.protocol !== 'http:' && address.protocol !== 'https:') {
    return say`No extension can fill this page of the browser.`
  }
  if (stores.has(address.hostname)) {
    return say`No extension can fill the pages of an extension store.`
  }
  return ''
}

/** The page of the active tab and the form maps that were made for it. */
export async function activePage(): Promise<ActivePage | undefined> {
  const [tab] = await browser.tabs.query({ active: true, currentWindow: true })
  if (tab?.id === undefined) return undefined
  const url = tab.url ?? ''
  const barred = whyBarred(url)
  const all = url && !barred ? await listMaps() : []
  const maps = all.filter((map) => serves(map, url))
  const near = all.filter((map) => !maps.includes(map) && map.address.origin === new URL(url).origin)
  return { tab: tab.id, window: tab.windowId ?? -2, url, barred, maps, near }
}

/**
 * Tells which page is worked on, now and whenever the form maps change.
 * @param beside whether tabs change while the calculator stays
 */
export function followPage(take: (page: ActivePage | undefined) => void, beside: boolean, signal: AbortSignal): void {
  let turn = 0
  const look = async () => {
    const mine = ++turn
    const page = await activePage().catch(() => undefined)
    // Of several that are under way the newest counts: a page without form maps is told sooner than one with many.
    if (mine === turn && !signal.aborted) take(page)
  }
  void look()
  subscribe((notice) => notice.what === 'maps' && void look(), signal)
  if (beside) followTabs(() => void look(), signal)
}

/** Calls `look` when another tab comes to the front, when its page changes, and when this window is turned to again. */
function followTabs(look: () => void, signal: AbortSignal): void {
  const { onActivated, onUpdated } = browser.tabs
  const changed = (_tab: number, change: { status?: string }) => change.status === 'complete' && look()
  onActivated.addListener(look)
  onUpdated.addListener(changed)
  signal.addEventListener('abort', () => {
    onActivated.removeListener(look)
    onUpdated.removeListener(changed)
  })
  addEventListener('focus', look, { signal })
}
