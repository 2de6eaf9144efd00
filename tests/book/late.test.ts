/** Lines that reach the book after their fill, while somebody else ends it. */
import { expect, test } from 'vitest'
import { listEntries } from '../../lib/book/entries.ts'
import { addFillLine, closeUnended, startFill } from '../../lib/book/fills.ts'
import { noteLate } from '../../lib/book/late.ts'
import { context, fakeFill, fakeLine } from './fake.ts'
import './fresh.ts'

const bindings = ['a', 'b', 'c', 'd', 'e']

test.each([0, 1, 2, 3, 4, 5, 6, 8, 10, 12, 14, 16, 20, 24])(
  'they come %i turns after its end has begun: each line is in the book, once',
  async (turns) => {
    const fill = fakeFill('torn')
    const planned = bindings.map((binding) => ({ ...fill.planned[0]!, binding }))
    const lines = bindings.map((binding) => ({ ...fakeLine('flow'), binding }))
    await startFill({ ...fill, planned }, context)
    await addFillLine('torn', lines[0]!)
    const ended = closeUnended()
    for (let turn = 0; turn < turns; turn++) await new Promise((done) => setImmediate(done))
    await noteLate({ ...fill, planned }, lines, context)
    await ended
    const entries = await listEntries()
    const noted = entries.flatMap((entry) => ('lines' in entry ? entry.lines.map(({ binding }) => binding) : []))
    expect(noted.toSorted()).toEqual(bindings)
    expect(entries.length).toBeLessThanOrEqual(2)
  },
)
