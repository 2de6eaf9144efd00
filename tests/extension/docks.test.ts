/** The frame of a dock and the helper of its tab, with a browser that is played. */
import { beforeEach, expect, test, vi } from 'vitest'

const kept = vi.hoisted(() => {
  const items = new Map<string, unknown>()
  const session = {
    get: async (key: string) => (items.has(key) ? { [key]: items.get(key) } : {}),
    set: async (more: object) => void Object.entries(more).forEach(([key, value]) => items.set(key, value)),
    remove: async (key: string) => void items.delete(key),
  }
  Object.assign(globalThis, { browser: { storage: { session } } })
  return items
})
import { admitDock } from '../../lib/extension/docks.ts'

const self = 'this-extension'
const page = (tab: number) => ({ id: self, frameId: 0, tab: { id: tab } })
const frame = (tab: number) => ({ id: self, frameId: 7, tab: { id: tab } })
const opened: string[] = []
const ask = (message: unknown, sender: Parameters<typeof admitDock>[1]) =>
  admitDock(message, sender, self, async (path) => opened.push(path))
const tokenOf = async (tab: number): Promise<string> => {
  const given = await ask({ type: 'dock-opens' }, page(tab))
  if (!given?.ok || given.token === undefined) throw new Error('No token was given.')
  return given.token
}

beforeEach(() => {
  kept.clear()
  opened.length = 0
})

test('a frame joins the helper of its tab by the token, once', async () => {
  const token = await tokenOf(3)
  expect(await ask({ type: 'dock-joins', token }, frame(3))).toEqual({ ok: true })
  expect(await ask({ type: 'dock-joins', token }, frame(3))).toMatchObject({ ok: false })
})

test('two frames that name a token at once are not both let in', async () => {
  const token = await tokenOf(3)
  const both = await Promise.all([1, 2].map(() => ask({ type: 'dock-joins', token }, frame(3))))
  expect(both.map((answer) => answer?.ok)).toEqual([true, false])
})

test('no other tab, page, extension or guess is let in', async () => {
  const token = await tokenOf(3)
  await tokenOf(4)
  for (const [message, sender] of [
    [{ type: 'dock-joins', token }, frame(4)],
    [{ type: 'dock-joins', token }, page(3)],
    [
      { type: 'dock-joins', token },
      { ...frame(3), id: 'another' },
    ],
    [
      { type: 'dock-joins', token },
      { id: self, frameId: 7 },
    ],
    [{ type: 'dock-joins', token: '' }, frame(3)],
    [{ type: 'dock-joins', token: 'undefined' }, frame(5)],
    [{ type: 'dock-opens' }, frame(3)],
    [{ type: 'dock-apart' }, frame(3)],
  ] as const)
    expect(await ask(message, sender)).toMatchObject({ ok: false })
  expect(opened).toEqual([])
  expect(await ask({ type: 'dock-joins', token }, frame(3))).toEqual({ ok: true })
})

test('a token holds only until the helper of the tab asks for the next', async () => {
  const token = await tokenOf(3)
  const next = await tokenOf(3)
  expect(next).not.toBe(token)
  expect(await ask({ type: 'dock-joins', token }, frame(3))).toMatchObject({ ok: false })
  expect(await ask({ type: 'dock-joins', token: next }, frame(3))).toEqual({ ok: true })
})

test('where no frame can stand, the window is opened with a token that its address alone tells', async () => {
  const given = await ask({ type: 'dock-apart' }, page(3))
  expect(opened).toEqual([`/dock.html?tab=3#${given?.ok ? given.token : ''}`])
})

test('other messages are left to others', () => {
  expect(ask({ type: 'open-book' }, page(3))).toBeUndefined()
})
