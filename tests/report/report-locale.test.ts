import { expect, test, vi } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'

vi.mock('../../lib/words/say.ts', async (original) => ({ ...(await original<object>()), language: () => 'es' }))
const { reportOf } = await import('../../lib/report/content.ts')
const { readingOf } = await import('../../lib/results/reading.ts')
const { togetherWords } = await import('../../lib/results/together-lines.ts')
const { together } = await import('../../lib/job/together.ts')

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

test('names that hold numbers stay as typed in every sentence', () => {
  const job = demoJob()
  const device = { ...demoDevice(), name: 'Fan 3.1', intervalMonths: '12' }
  device.ranges = device.ranges.map((range, at) => ({ ...range, name: `2.${at}` }))
  const names = new Map(demoDevice().ranges.map(({ name }, at) => [name, `2.${at}`]))
  for (const one of job.tests) {
    one.role = one.role.replace(/1$/, '') + ' 1.5'
    for (const point of one.sheet.points) point.range = names.get(point.range) ?? point.range
  }
  const [first, ...rest] = job.tests
  first!.sheet.points.push({ ...first!.sheet.points[0]!, leftOut: 'a gap of 4.5 in' })
  const broken = { ...device, ranges: device.ranges.map((range) => ({ ...range, coefficient: '' })) }
  const said = JSON.stringify([
    ...job.tests.map((one) => [readingOf(job, one, [device]), readingOf(job, one, [broken])]),
    ...rest.map((one) => reportOf(job, one, [device], undefined)),
    togetherWords(together(job, [device])),
  ])
  expect(said).toMatch(/Fan 3\.1/)
  expect(said).toMatch(/2\.0/)
  expect(said.match(/Fan 3,1|“2,\d”|range 2,\d| 1,5\b(?! )|4,5 in/g) ?? []).toEqual([])
})
