/** What can be chosen for a test, and what its report says of it. */
import { describe, expect, test } from 'vitest'
import { demoDevice } from '../../lib/job/demo.ts'
import { sheetSchema } from '../../lib/sheet/schema.ts'
import { procedures as ofNewJobs } from '../../lib/view/book/first-test-panel.tsx'
import { procedures as ofTests } from '../../lib/view/calculator/sheet-fields.tsx'
import { reportOf } from '../../lib/report/content.ts'
import { anchor, devices, eightPoints } from '../report/report-fixtures.ts'

describe.each([
  ['a test', ofTests],
  ['a new job', ofNewJobs],
])('the procedures of %s', (_, list) => {
  test('are all that the engine follows, ASTM E1827 at two pressures among them', () => {
    expect(list.map(([id]) => id)).toEqual([...sheetSchema.shape.procedure.options])
    expect(list.find(([id]) => id === 'two-point')?.[1]).toMatch(/E1827/)
  })
})

test('what is noted of a test stands in its report', () => {
  const { job, test: one } = eightPoints()
  const noted = { ...one, notes: 'Attic hatch taped.\nDamper could not be closed.' }
  const { notes } = reportOf(job, noted, devices, anchor)
  expect(notes.join(' ')).toContain('Attic hatch taped. Damper could not be closed.')
})

test('the ranges of the demo device have words of their own, no letters, and no numbers', () => {
  for (const { name } of demoDevice().ranges) expect(name).toMatch(/^[a-z]{4,}$/)
})
