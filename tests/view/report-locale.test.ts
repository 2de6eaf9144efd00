import { expect, test, vi } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'

vi.mock('../../lib/words/say.ts', async (original) => ({ ...(await original<object>()), language: () => 'es' }))
const { reportOf } = await import('../../lib/view/report/content.ts')

// Decimal comma in Spanish of Spain: Unicode CLDR.
test('in a language with a decimal comma the report writes its own numbers with one, and what was typed as typed', () => {
  const job = demoJob()
  const after = job.tests.find(({ role }) => role === 'after')!
  const content = reportOf(job, after, [demoDevice()], undefined)
  expect(content.figures.find(({ id }) => id === 'air-changes-50')?.value).toBe('2,86')
  expect(content.limitHead).toMatch(/3,0/)
  expect(content.verdict?.interval?.mark).toBe(',')
  expect(content.plot?.equation.exponent).toBe('0,650')
  expect(content.figures.find(({ id }) => id === 'equivalent-leakage-area')?.name).toMatch(/Cd 0,611$/)
  expect(content.readings.rows[0]).toEqual(expect.arrayContaining(['−51.3', '50,3']))
  expect(content.facts.map(({ value }) => value).join()).toContain('620')
})
