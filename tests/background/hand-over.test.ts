import { expect, test, vi } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { material } from '../../lib/job/material.ts'
import { takeHandOver } from '../../lib/background/hand-over.ts'

const task = { type: 'map', material: material(demoJob(), [demoDevice()]) } as const
type Put = Parameters<typeof takeHandOver>[3]
const keptOut: Put = () => Promise.reject(new Error('The page did not answer.'))
const helper = { id: 'self', frameId: 0, tab: { id: 7 } }

test('the helper of a page has the other part put into its own tab', async () => {
  const put = vi.fn<Put>(async () => {})
  expect(await takeHandOver({ type: 'hand-over', task }, helper, 'self', put)).toEqual({ ok: true })
  expect(put).toHaveBeenCalledExactlyOnceWith(7, task)
})

test('what keeps the other part out is said', async () => {
  expect(await takeHandOver({ type: 'hand-over', task }, helper, 'self', keptOut)).toEqual({
    ok: false,
    message: 'The page did not answer.',
  })
})

test('nobody else is heard, and nothing else is taken', async () => {
  const put = vi.fn<Put>(async () => {})
  for (const sender of [
    { ...helper, id: 'other' },
    { ...helper, frameId: 3 },
    { id: 'self', frameId: 0 },
  ])
    expect(await takeHandOver({ type: 'hand-over', task }, sender, 'self', put)).toMatchObject({ ok: false })
  expect(takeHandOver({ type: 'hand-over', task: { type: 'end' } }, helper, 'self', put)).toBeUndefined()
  expect(put).not.toHaveBeenCalled()
})
