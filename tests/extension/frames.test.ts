/** Frames of other origins, with a browser that is played: what the background does for them outlives its worker. */
import { beforeEach, expect, test, vi } from 'vitest'

const played = vi.hoisted(() => {
  const heard: (() => void)[] = []
  const looked: number[] = []
  const kept: Record<string, unknown> = {}
  const browser = {
    runtime: { id: 'played' },
    i18n: { getMessage: () => '', getUILanguage: () => 'en' },
    permissions: { onAdded: { addListener: (listener: () => void) => heard.push(listener) } },
    scripting: {
      executeScript: async ({ target }: { target: { tabId: number } }) => void looked.push(target.tabId),
    },
    storage: {
      session: {
        get: async (key: string) => (key in kept ? { [key]: kept[key] } : {}),
        set: async (items: object) => void Object.assign(kept, items),
      },
    },
  }
  Object.assign(globalThis, { browser, chrome: browser })
  return { heard, looked, browser }
})
vi.mock('webextension-polyfill', () => ({ default: played.browser }))

/** The background as it is after each start: nothing of the one before is left in memory. */
async function start() {
  vi.resetModules()
  played.heard.length = 0
  const { joinAllowed, relay } = await import('../../lib/extension/frames.ts')
  joinAllowed()
  return relay
}

beforeEach(() => {
  played.looked.length = 0
})

test('a frame joins in when its origin is allowed after the background was put to sleep', async () => {
  const relay = await start()
  const sender = { id: 'played', tab: { id: 7 }, frameId: 0 } as Parameters<typeof relay>[1]
  const shown: string[] = []
  const answer = await relay({ type: 'ask-frame', origin: 'https://forms.larch.example' }, sender, async (origin) => {
    shown.push(origin)
  })
  expect(answer).toEqual({ ok: true })
  expect(shown).toEqual(['https://forms.larch.example'])
  await start()
  for (const allowed of played.heard) allowed()
  await vi.waitFor(() => expect(played.looked).toEqual([7]))
})
