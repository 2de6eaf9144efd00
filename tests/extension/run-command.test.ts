/** Every key of the manifest, pressed in a browser that is played: it arrives at the background and does its work. */
import 'fake-indexeddb/auto'
import { beforeEach, expect, test, vi } from 'vitest'
import { fakeClues } from '../form/fake.ts'

type OnCommand = (command: string, tab: { id: number; url: string; windowId: number }) => void

const played = vi.hoisted(() => {
  const heard: OnCommand[] = []
  const calls: unknown[][] = []
  const note =
    (name: string) =>
    (...given: unknown[]) => {
      calls.push([name, ...given])
      return Promise.resolve(undefined)
    }
  const event = { addListener: () => {} }
  const browser = {
    runtime: {
      id: 'played',
      getManifest: () => ({ version: '1' }),
      getURL: (path: string) => `moz-extension://played${path}`,
      onMessage: event,
      onStartup: event,
      onInstalled: event,
      onConnect: event,
    },
    i18n: { getMessage: () => '', getUILanguage: () => 'en' },
    commands: { onCommand: { addListener: (listener: OnCommand) => heard.push(listener) } },
    tabs: { onRemoved: event, query: async () => [], sendMessage: note('send') },
    scripting: { executeScript: note('inject') },
    sidePanel: { open: note('beside') },
    action: { openPopup: note('popup') },
    permissions: { onAdded: event, onRemoved: event, getAll: async () => ({ origins: [] }) },
    webNavigation: { onCommitted: event },
    storage: {
      managed: { get: async () => ({}) },
      local: { get: async () => ({}), set: async () => {}, remove: async () => {} },
      session: { get: async () => ({}) },
    },
  }
  Object.assign(globalThis, { browser, chrome: browser })
  return { heard, calls }
})

const { default: background } = await import('../../entrypoints/background.ts')
const { default: config } = await import('../../wxt.config.ts')
const { demoJob } = await import('../../lib/job/demo.ts')
const { saveJob } = await import('../../lib/book/jobs.ts')
const { saveMap } = await import('../../lib/book/maps.ts')
const { saveSettings } = await import('../../lib/book/settings.ts')

const form = { id: 7, url: 'https://larch.example/forms/lc-7', windowId: 3 }

const press = (command: string): void => played.heard.forEach((listener) => listener(command, form))

beforeEach(() => {
  played.calls.length = 0
})

test('the browser is asked for three keys, each with a default of its own', async () => {
  const { manifest } = config
  const given = typeof manifest === 'function' ? await manifest({ browser: 'chrome' } as never) : await manifest
  const commands = given?.commands ?? {}
  expect(Object.keys(commands)).toEqual(['_execute_action', 'beside', 'fill'])
  const keys = Object.values(commands).map(({ suggested_key: key }) => (typeof key === 'object' ? key.default : key))
  // Alt with Shift and a letter is one of the combinations that the browsers' documentation allows.
  for (const key of keys) expect(key).toMatch(/^Alt\+Shift\+[A-Z]$/)
  expect(new Set(keys).size).toBe(keys.length)
})

test('the background listens, and opens the sidebar within the press', () => {
  background.main()
  expect(played.heard.length).toBe(1)
  press('beside')
  // Not a moment later: the browser would refuse.
  expect(played.calls).toEqual([['beside', { windowId: 3 }]])
})

test('without a job or a form map the key to fill opens the popup, which says what is missing', async () => {
  press('fill')
  await vi.waitFor(() => expect(played.calls).toEqual([['popup']]))
})

test('with both, it puts the helper into the page in front and shows the plan', async () => {
  const job = await saveJob(demoJob())
  await saveSettings({ current: { job: job.id, test: job.tests[0]!.id } })
  const map = await saveMap({
    id: 'lc-7',
    version: 1,
    created: '2026-02-11T10:00:00.000Z',
    updated: '2026-02-11T10:00:00.000Z',
    name: 'Form LC-7',
    address: { origin: 'https://larch.example', path: '/forms/lc-7' },
    bindings: [],
  })
  press('fill')
  await vi.waitFor(() => expect(played.calls.length).toBe(2))
  expect(played.calls[0]).toEqual(['inject', { target: { tabId: 7 }, files: ['/helper.js'] }])
  expect(played.calls[1]).toMatchObject(['send', 7, { type: 'plan', map: { id: map.id } }, { frameId: 0 }])
})

test('a form map that names a control drawn by the page brings what writes it', async () => {
  const job = await saveJob(demoJob())
  await saveSettings({ current: { job: job.id, test: job.tests[0]!.id } })
  await saveMap({
    id: 'lc-7',
    version: 2,
    created: '2026-02-11T10:00:00.000Z',
    updated: '2026-02-11T11:00:00.000Z',
    name: 'Form LC-7',
    address: { origin: 'https://larch.example', path: '/forms/lc-7' },
    bindings: [{ id: 'a', control: fakeClues({ kind: 'combobox' }), source: { from: 'text', text: 'attic' } }],
  })
  press('fill')
  await vi.waitFor(() => expect(played.calls.length).toBe(2))
  expect(played.calls[0]).toEqual(['inject', { target: { tabId: 7 }, files: ['/extra.js', '/helper.js'] }])
})

test('a command of no name does nothing', async () => {
  press('another')
  await new Promise((done) => setTimeout(done, 50))
  expect(played.calls).toEqual([])
})
