/** The page that the calculator works on, in a browser that is played. */
import { expect, test, vi } from 'vitest'
import type { FormMap } from '../../lib/form/schema.ts'

const played = vi.hoisted(() => {
  const activated: (() => void)[] = []
  const front = { id: 1, url: 'https://larch.example/form', windowId: 1 }
  const waiting: (() => void)[] = []
  const nothing = { addListener: () => {}, removeListener: () => {} }
  const browser = {
    runtime: { id: 'played', getURL: (path: string) => `moz-extension://played${path}` },
    i18n: { getMessage: () => '', getUILanguage: () => 'en' },
    tabs: {
      query: async () => [{ ...front }],
      onActivated: { addListener: (listener: () => void) => activated.push(listener), removeListener: () => {} },
      onUpdated: nothing,
    },
  }
  Object.assign(globalThis, { browser, chrome: browser, addEventListener: () => {} })
  return { activated, front, waiting }
})
vi.mock('../../lib/book/maps.ts', () => ({
  listMaps: () => new Promise<FormMap[]>((resolve) => played.waiting.push(() => resolve([]))),
}))

const { followPage } = await import('../../lib/extension/page.ts')

test('is the one in front, also when what was asked of the one before is answered later', async () => {
  const told: (string | undefined)[] = []
  followPage((page) => told.push(page?.url), true, new AbortController().signal)
  await vi.waitFor(() => expect(played.waiting).toHaveLength(1))
  // No form map is looked for there: this answer comes first.
  Object.assign(played.front, { id: 2, url: 'about:blank' })
  for (const look of played.activated) look()
  await vi.waitFor(() => expect(told).toEqual(['about:blank']))
  for (const answer of played.waiting) answer()
  await new Promise((resolve) => setTimeout(resolve))
  expect(told).toEqual(['about:blank'])
})
