import { describe, expect, it, test } from 'vitest'
import { answerShape } from '../../lib/messages/message-shapes.ts'
import { answerSchema } from '../../lib/messages/answers.ts'
import { fromFramesSchema, toBackgroundSchema, toHelperSchema } from '../../lib/messages/messages.ts'
import { fits, type Shape } from '../../lib/messages/shape.ts'
import { toHelperShape } from '../heard.ts'
import { generator } from '../random.ts'
import { type Schema, shapeOf, valueOf } from '../shape.ts'

const heard: [string, Schema & { safeParse: (value: unknown) => { success: boolean } }, Shape][] = [
  ['the helper hears', toHelperSchema, toHelperShape],
  ['the background answers', answerSchema, answerShape],
]
describe.each(heard)('what %s', (_, schema, shape) => {
  it('is described as its schema has it, word for word', () => {
    expect(shape).toEqual(shapeOf(schema))
  })

  it('is taken and refused as by its schema: 4,000 messages, whole and spoilt', () => {
    const random = generator(7)
    let taken = 0
    for (let count = 0; count < 4000; count++) {
      const message = valueOf(schema, random, count % 2 === 0 ? 0 : 0.03)
      const fitting = schema.safeParse(message).success
      expect([message, fits(message, shape)]).toEqual([message, fitting])
      if (fitting) taken += 1
    }
    expect(taken).toBeGreaterThan(2000)
    expect(taken).toBeLessThan(3990)
  })
})

describe('what the helper hears', () => {
  it.each([null, undefined, 'end', 7, [], {}, { type: 'END' }, { type: ['end'] }, { type: 'write', key: 1, text: '' }])(
    'refuses %j',
    (message) => expect(fits(message, toHelperShape)).toBe(false),
  )
})

describe('what the background answers', () => {
  it.each([
    { ok: true },
    { ok: true, entry: 4 },
    { ok: false, message: 'no' },
    { ok: true, written: { held: true } },
    { ok: true, suggested: [[], [{ item: 'volume', score: 1, reason: 'label' }]] },
  ])('may be %j', (answer) => expect(fits(answer, answerShape)).toBe(true))
  it.each([
    undefined,
    null,
    {},
    { ok: 'yes' },
    { ok: false },
    { ok: true, entry: 'four' },
    { ok: true, written: { reason: 4 } },
    { ok: true, suggested: 'all' },
    { ok: true, message: 'no', suggested: [[{ item: 'volume' }]] },
  ])('may not be %j', (answer) => expect(fits(answer, answerShape)).toBe(false))
})

const schemas: [string, { safeParse: (value: unknown) => { success: boolean } } & Schema][] = [
  ['to the background', toBackgroundSchema],
  ['from frames', fromFramesSchema],
]
test.each(schemas)('messages %s: whatever comes is taken or refused, never thrown at', (_, schema) => {
  const random = generator(11)
  for (let count = 0; count < 1000; count++) {
    const message = valueOf(schema, random, 0.05)
    expect(typeof schema.safeParse(message).success).toBe('boolean')
  }
})
