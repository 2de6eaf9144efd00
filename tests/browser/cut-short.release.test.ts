/** Further ways to end a fill: receipt and entry say what the page holds. All steps: `npm run soak cut-short`. */
import { afterAll, beforeAll, expect, test } from 'vitest'
import { CutShort, type Disturbance } from './cut-short.ts'

const cut = new CutShort()

beforeAll(() => cut.start())
afterAll(() => cut.close())

/** Of each kind those steps at which something else happens than at their neighbours; silence takes half a minute a step. */
const sample: [Disturbance, number][] = [
  ['the background is ended', 8],
  ['the page goes to another address', 4],
  ['the disk is full', 0],
  ['the disk is full', 8],
  ['the extension is loaded anew', 4],
]

test.each(sample)('%s at step %i', async (how, step) => {
  expect(await cut.run(how, step)).toEqual([])
})
