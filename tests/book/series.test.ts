import { expect, test } from 'vitest'
import { addFillLine, endFill, listOpenFills, startFill } from '../../lib/book/fills.ts'
import { filledSoFar } from '../../lib/book/series.ts'
import { context, fakeFill, fakeLine } from './fake.ts'
import './fresh.ts'

const plannedLine = (binding: string) => ({ binding, control: binding, section: '', source: '', text: '1' })

async function step(id: string, at: number, started: string, bindings: string[]) {
  const fill = fakeFill(id, { started, step: { at, of: 3 }, planned: bindings.map(plannedLine) })
  await startFill(fill, context)
  for (const binding of bindings) await addFillLine(id, fakeLine(binding))
  return endFill(id)
}

test('the steps of one submission share a series, the next submission has its own', async () => {
  const first = await step('one', 1, '2026-02-11T10:00:00Z', ['a', 'b'])
  const second = await step('two', 2, '2026-02-11T10:05:00Z', ['c'])
  expect([first.series, second.series]).toEqual(['one', 'one'])
  expect(await filledSoFar(first.job.id, first.map.id, new Date('2026-02-11T10:06:00Z'))).toEqual(
    new Set(['a', 'b', 'c']),
  )
  const third = await step('three', 3, '2026-02-11T10:10:00Z', ['d'])
  expect(third.series).toBe('one')
  // All steps are done: nothing is left over for the popup to speak of.
  expect((await filledSoFar(first.job.id, first.map.id, new Date('2026-02-11T10:11:00Z'))).size).toBe(0)
  const again = await step('four', 1, '2026-02-11T11:00:00Z', ['a', 'b'])
  expect(again.series).toBe('four')
})

test('what a reload of the page cut short is closed, and the fill after it goes on with it', async () => {
  const tab = { ...context, tab: 7 }
  const fill = fakeFill('torn', { started: '2026-02-11T10:00:00Z', planned: ['a', 'b', 'c'].map(plannedLine) })
  await startFill(fill, tab)
  await addFillLine('torn', fakeLine('a'))
  const { job, map } = fill
  expect(await filledSoFar(job.id, map.id, new Date('2026-02-11T10:01:00Z'))).toEqual(new Set(['a']))
  const rest = fakeFill('rest', { started: '2026-02-11T10:02:00Z', planned: ['b', 'c'].map(plannedLine) })
  await startFill(rest, tab)
  expect((await listOpenFills()).map(({ id }) => id)).toEqual(['rest'])
  expect((await listOpenFills())[0]?.fill.series).toBe('torn')
})

test('a day later it is another submission', async () => {
  await step('one', 1, '2026-02-11T10:00:00Z', ['a'])
  expect((await step('two', 2, '2026-02-13T10:00:00Z', ['c'])).series).toBe('two')
})
