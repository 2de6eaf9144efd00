/**
 * A fill is killed, cut off, and not noted: receipt and entry say what the page holds. More: `npm run test:release`; all
 * steps: `npm run soak cut-short`.
 */
import { afterAll, beforeAll, expect, test } from 'vitest'
import { CutShort, type Disturbance } from './cut-short.ts'

const cut = new CutShort()

beforeAll(() => cut.start())
afterAll(() => cut.close())

const sample: [Disturbance, number][] = [
  ['the background is ended', 3],
  ['the disk is full', 3],
  ['the browser is killed', 5],
]

test.each(sample)('%s at step %i', async (how, step) => {
  expect(await cut.run(how, step)).toEqual([])
})
