/** What can be chosen for a test, and what its report says of it. */
import { expect, test } from 'vitest'
import { demoDevice } from '../../lib/job/demo.ts'
import { sheetSchema } from '../../lib/sheet/schema.ts'
import { procedures } from '../../lib/view/calculator/sheet-fields.tsx'
import { LimitChoice } from '../../lib/view/calculator/limit-choice.tsx'
import { reportOf } from '../../lib/report/content.ts'
import { anchor, devices, eightPoints } from '../report/report-fixtures.ts'

test('the procedures of a test are all that the engine follows, ASTM E1827 at two pressures among them', () => {
  expect(procedures.map(([id]) => id)).toEqual([...sheetSchema.shape.procedure.options])
  expect(procedures.find(([id]) => id === 'two-point')?.[1]).toMatch(/E1827/)
})

test('the list of limits has the words of the procedure: n50 after ISO 9972, ACH50 else', () => {
  const { job, test: one } = eightPoints()
  const offer = { shows: () => true, fixed: () => false }
  const listed = (procedure: 'iso-9972' | 'astm-e779') =>
    JSON.stringify(
      LimitChoice({
        job,
        test: { ...one, limit: 'own', sheet: { ...one.sheet, procedure } },
        found: () => undefined,
        offer,
        onTest: () => {},
      }),
    )
  expect(listed('iso-9972')).toMatch(/n50/)
  expect(listed('iso-9972')).not.toMatch(/ACH50/)
  expect(listed('astm-e779')).toMatch(/ACH50/)
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
