import { expect, test, vi } from 'vitest'
import { bringExtra } from '../../lib/extension/bring-extra.ts'

type Put = Parameters<typeof bringExtra>[3]
const helper = { id: 'self', frameId: 0, tab: { id: 7 } }
const keptOut: Put = () => Promise.reject(new Error('Cannot access contents of the page.'))

test('the helper of a page has the writers of further kinds put into its own tab', async () => {
  const put = vi.fn<Put>(async () => [])
  expect(await bringExtra({ type: 'extra' }, helper, 'self', put)).toEqual({ ok: true })
  expect(put).toHaveBeenCalledExactlyOnceWith(7, '/extra.js')
})

test('what keeps them out is said', async () => {
  expect(await bringExtra({ type: 'extra' }, helper, 'self', keptOut)).toEqual({
    ok: false,
    message: 'Cannot access contents of the page.',
  })
})

test('nobody else is heard, and nothing else is taken', async () => {
  const put = vi.fn<Put>(async () => [])
  for (const sender of [
    { ...helper, id: 'other' },
    { ...helper, frameId: 3 },
    { id: 'self', frameId: 0 },
  ])
    expect(await bringExtra({ type: 'extra' }, sender, 'self', put)).toMatchObject({ ok: false })
  expect(bringExtra({ type: 'open-book' }, helper, 'self', put)).toBeUndefined()
  expect(put).not.toHaveBeenCalled()
})
