import type { Runtime } from 'webextension-polyfill'
import { describe, expect, test } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { material } from '../../lib/job/material.ts'
import { suggestedSchema } from '../../lib/messages/messages.ts'
import { bounds } from '../../lib/bounds.ts'
import { answerSuggest } from '../../lib/extension/suggestions.ts'
import { fakeClues } from '../form/fake.ts'

const job = material(demoJob(), [demoDevice()], { now: new Date('2026-03-01T12:00:00Z') })
const tab = { id: 7 } as Runtime.MessageSender['tab']
const own = { id: 'self', tab }
const ask = {
  type: 'suggest',
  clues: [fakeClues({ name: 'Nothing known', attributes: {} }), fakeClues()],
  material: job,
}

describe('the background asked for suggestions', () => {
  test('answers each control in the order asked, as the schema has it', async () => {
    const answer = await answerSuggest(ask, own, 'self')
    if (!answer?.ok) throw new Error('There was no answer.')
    expect(suggestedSchema.parse(answer.suggested)).toHaveLength(2)
    expect(answer.suggested?.[1]?.[0]?.item).toBe('after/flow-50')
    expect(answer.suggested?.[0]?.filter(({ score }) => score >= 0.7)).toEqual([])
  })

  test('hears only its own helper in a tab', async () => {
    expect(await answerSuggest(ask, { id: 'other', tab }, 'self')).toMatchObject({ ok: false })
    expect(await answerSuggest(ask, { id: 'self' }, 'self')).toMatchObject({ ok: false })
  })

  test.each([
    ['another message', { type: 'open-book' }],
    ['clues of no known kind', { ...ask, clues: [{ ...fakeClues(), kind: 'password' }] }],
    ['more controls than a page has', { ...ask, clues: Array.from({ length: bounds.listed + 1 }, () => fakeClues()) }],
    ['a material that is none', { ...ask, material: {} }],
  ])('leaves %s to others', (_, message) => {
    expect(answerSuggest(message, own, 'self')).toBeUndefined()
  })
})
