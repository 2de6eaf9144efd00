import { expect, test } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { emptyJob, emptyPoint, emptyTest } from '../../lib/job/empty.ts'
import type { Job, Test } from '../../lib/job/schema.ts'
import { unitSets } from '../../lib/job/units.ts'
import { besideCell, readingOf } from '../../lib/results/reading.ts'
import { likelihood } from '../../lib/results/verdict-lines.ts'

/** A published worked example: 433 cfm at 50 Pa in 8,726 ft3 is 2.98 air changes per hour (433 x 60 / 8726). */
function simple(change: (blank: Test) => Test = (blank) => blank): [Job, Test] {
  const job = emptyJob(unitSets.IP)
  const blank = emptyTest('final', 'enclosure', unitSets.IP)
  const built = change({
    ...blank,
    sheet: { ...blank.sheet, points: [{ ...emptyPoint(), pressure: '-50', flow: '433' }] },
  })
  return [{ ...job, building: { ...job.building, volume: '8,726' }, tests: [built] }, built]
}

test('433 cfm in 8,726 ft3 is written 2.98 ACH50', () => {
  const [job, typed] = simple()
  const reading = readingOf(job, typed, [])
  expect(reading.verdict).toMatchObject({ value: '2.98', unit: 'ACH50', likely: '' })
  expect(reading.verdict).not.toHaveProperty('verdict')
  expect(reading.used).toBe(0)
  expect(reading.brought).toEqual(['433'])
  expect(reading.basis).toBe('from point 1, nearest 50 Pa')
})

test('what to type for a verdict is said once: beside the cell only why', () => {
  const blank = emptyTest('duct system 1', 'ducts', unitSets.IP)
  const built: Test = {
    ...blank,
    limit: 'own',
    ownLimit: '4',
    sheet: { ...blank.sheet, points: [{ ...emptyPoint(), pressure: '25', flow: '62' }] },
  }
  const { verdict, found } = readingOf({ ...emptyJob(unitSets.IP), tests: [built] }, built, [])
  const said = [...(verdict?.notes ?? []), ...found.values()].filter((text) => /type the floor area/i.test(text))
  expect(said).toEqual([
    'Floor area: the flow per floor area needs it for the verdict. Type the floor area, or choose a limit on another figure.',
  ])
  expect(found.get('building.floorArea')).toBe('The flow per floor area needs it for the verdict.')
})

test('with a limit the verdict is said first, with its value', () => {
  const [job, typed] = simple((one) => ({ ...one, limit: 'own', ownLimit: '3' }))
  expect(readingOf(job, typed, []).verdict?.verdict).toEqual({ meets: true, text: 'Meets the limit, 3.0 ACH50' })
  const [, tight] = simple((one) => ({ ...one, limit: 'own', ownLimit: '2.5' }))
  expect(readingOf(job, tight, []).verdict?.verdict).toEqual({
    meets: false,
    text: 'Does not meet the limit, 2.5 ACH50',
  })
})

test('an interval that reaches past the limit is told with the digits that show it', () => {
  const job = demoJob()
  const ducts = job.tests.find(({ role }) => role === 'duct system 1')!
  const { verdict } = readingOf(job, ducts, [demoDevice()])
  expect(verdict?.reach).toContain('reaches past it')
  const [, low, high] = /([\d.]+) to ([\d.]+)/.exec(verdict?.reach ?? '') ?? []
  expect(Number(low)).toBeLessThan(4)
  expect(Number(high)).toBeGreaterThan(4)
})

test('when rounding flips the verdict both numbers are said', () => {
  const [job, typed] = simple((one) => ({ ...one, limit: 'own', ownLimit: '2.977' }))
  const { verdict } = readingOf(job, typed, [])
  expect(verdict?.verdict?.meets).toBe(false)
  const [, over] = simple((one) => ({ ...one, limit: 'own', ownLimit: '2.9775' }))
  const flipped = readingOf(job, over, []).verdict
  expect(flipped?.verdict?.meets).toBe(true)
  expect(flipped?.notes.join(' ')).toContain('2.98')
  expect(flipped?.notes.join(' ')).toContain('The unrounded number decides.')
})

test('a figure that lacks a cell says which', () => {
  const [job, typed] = simple()
  const bare = { ...job, building: { ...job.building, volume: '' } }
  const reading = readingOf(bare, typed, [])
  expect(reading.lacking.join(' ')).toMatch(/ACH50.* needs? the volume\./)
  expect(reading.verdict?.unit).toBe('CFM50')
})

test('an untouched test says what to type and finds fault with nothing', () => {
  const job = emptyJob(unitSets.IP)
  const reading = readingOf(job, emptyTest('before', 'enclosure', unitSets.IP), [])
  expect(reading.verdict).toBeUndefined()
  expect(reading.found.size).toBe(0)
  expect(reading.waiting).toMatchInlineSnapshot(
    `"Type the house pressure and the flow of a point; the figures follow at once."`,
  )
})

test('a bad cell is named by its path, in words that stand beside it', () => {
  const [job, typed] = simple((one) => ({
    ...one,
    sheet: { ...one.sheet, points: [...one.sheet.points, { ...emptyPoint(), pressure: '-40', flow: 'abc' }] },
  }))
  const reading = readingOf(job, typed, [])
  expect(reading.found.get('points.1.flow')).toMatch(/^“abc” is not a number\./)
  expect(reading.brought[1]).toBeUndefined()
})

test('the name of the cell is left out beside the cell', () => {
  expect(besideCell('points.2.flow', 'Point 3, flow: nothing typed, so the row is left out.')).toBe(
    'Nothing typed, so the row is left out.',
  )
  expect(besideCell('points', 'The pressures must differ: two are the same.')).toBe(
    'The pressures must differ: two are the same.',
  )
})

test('every test of the demo job has a verdict, and doubtful checks stand first', () => {
  const job = demoJob()
  for (const one of job.tests) {
    const reading = readingOf(job, one, [demoDevice()])
    expect(reading.verdict?.value).toMatch(/^\d/)
    const outcomes = reading.checks.map(({ outcome }) => outcome)
    expect(outcomes).toEqual(outcomes.toSorted((a, b) => order.indexOf(a) - order.indexOf(b)))
  }
})

const order = ['bad', 'doubtful', 'good', 'not checked']

test('a chance is never written as certainty', () => {
  expect(likelihood(0.9999, { value: 3 })).toBe('More than 99 % likely below 3.0.')
  expect(likelihood(0.0001, { value: 3 })).toBe('Less than 1 % likely below 3.0.')
  expect(likelihood(0.947, { value: 0.28 })).toBe('95 % likely below 0.28.')
})

const factorSaid = (change: Partial<Test['sheet']>) => {
  const [job, typed] = simple((one) => ({ ...one, onePointFactor: true, sheet: { ...one.sheet, ...change } }))
  const { verdict, factor } = readingOf(job, typed, [])
  return { value: verdict?.value, notes: verdict?.notes.filter((note) => note.includes('1.1')), factor }
}

/** What is said of the factor must be so: figures of ducts and of regressions are not multiplied by it. */
test('a factor of 1.1 is spoken of only where it multiplies', () => {
  // 1.1 × 433 × 60 / 8726 = 3.275; ducts: 433 × (25 / 50)^0.6 = 285.7 cfm.
  const multiplied = 'The one-point result is multiplied by 1.1, in every figure and in what is entered.'
  expect(factorSaid({})).toEqual({ value: '3.28', notes: [multiplied], factor: 'multiplied by 1.1' })
  expect(factorSaid({ subject: 'ducts' })).toEqual({ value: '286', notes: [], factor: '' })
})

test('flows at other pressures do not stand under test quality', () => {
  const [job, typed] = simple((one) => one)
  for (const one of [typed, { ...typed, sheet: { ...typed.sheet, subject: 'ducts' as const } }]) {
    const groups = new Map(readingOf(job, one, []).groups.map(({ title, lines }) => [title, lines.map(({ id }) => id)]))
    expect(groups.get('test quality')?.filter((id) => /^flow-\d+$/.test(id)) ?? []).toEqual([])
    expect(groups.get('flows at other pressures')).toContain('flow-75')
  }
})

test('a test after ISO 9972 says n50 everywhere beside its qE50, and no ACH50', () => {
  const [job, typed] = simple((one) => ({
    ...one,
    sheet: {
      ...one.sheet,
      procedure: 'iso-9972' as const,
      points: ['60', '50', '40', '30', '20', '10'].map((pressure, at) =>
        Object.assign(emptyPoint(), { pressure, flow: String(500 - 60 * at) }),
      ),
    },
  }))
  const { verdict, groups, lacking } = readingOf(job, typed, [])
  expect(verdict?.unit).toBe('n50')
  expect(
    JSON.stringify([verdict?.drawn, groups.map(({ lines }) => lines.map(({ name }) => name)), lacking]),
  ).not.toContain('ACH50')
})
