/** Typed cells of a field check with a known hole: what is read, what is asked for, and its units. */
import { expect, test } from 'vitest'
import { readTest } from '../../lib/job/read.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import { testSchema, type TypedFieldCheck } from '../../lib/job/schema.ts'
import { switchTestUnits, unitSets } from '../../lib/job/units.ts'
import { fakeDevices, fakeJob, fakeTest } from './fake.ts'

const hole = (typed: Partial<TypedFieldCheck>) =>
  fakeTest({ fieldCheck: { area: '100', pressure: '50', flow: '757', discharge: '', ...typed } })

const problems = (typed: Partial<TypedFieldCheck>) =>
  readTest(fakeJob(), hole(typed), fakeDevices()).problems.map(({ message }) => message)

const check = (one: ReturnType<typeof fakeTest>) =>
  reduceTest(fakeJob(), one, fakeDevices()).report?.checks.find(({ id }) => id === 'known-hole')

test('a test that was kept before the cells existed is still one, and its check says what to do', () => {
  expect(testSchema.parse(fakeTest())).toEqual(fakeTest())
  expect(check(fakeTest())?.outcome).toBe('not checked')
  expect(problems({ area: '', pressure: ' ', flow: '', discharge: '' })).toEqual([])
})

/** Physics of an orifice, by hand: 0.6 × 100 in2 (0.064516 m2) × √(2 × 50 / 1.2041) × 3600 s = 1269.9 m3/h = 747.5 cfm. */
test('what was typed is compared, at a coefficient of its own if there is one', () => {
  expect(testSchema.parse(hole({}))).toEqual(hole({}))
  expect(readTest(fakeJob(), hole({}), fakeDevices()).sheet?.fieldCheck).toEqual({ area: 100, pressure: 50, flow: 757 })
  // The air is not typed, so that it is the same in hole and device.
  const typed = hole({ discharge: '0.6', pressure: '-50' })
  expect(check({ ...typed, sheet: { ...typed.sheet, indoor: '', outdoor: '' } })).toMatchObject({
    outcome: 'good',
    found: '757 cfm',
    expected: expect.stringMatching(/^747\.\d cfm/),
  })
  expect(check(hole({ flow: '600' }))?.outcome).toBe('bad')
  // The same hole in square centimetres, named behind the number.
  expect(readTest(fakeJob(), hole({ area: '645.16 cm²' }), fakeDevices()).sheet?.fieldCheck?.area).toBeCloseTo(100, 9)
})

test('cells that are missing or wrong are named, and leave the other figures alone', () => {
  expect(problems({ flow: '' })).toEqual([
    'Known hole, flow measured through it: nothing typed, so the flow is not checked against the hole. Type it, or empty the other cells of the hole.',
  ])
  expect(problems({ area: '0', pressure: 'fifty', discharge: '1.2' })).toMatchInlineSnapshot(`
    [
      "Known hole, area: 0 is not the area of a hole. Type a number above 0, or empty the cell.",
      "Known hole, pressure across it: “fifty” is not a number. Type digits, for example 433 or 1,020.5, or empty the cell.",
      "Known hole, discharge coefficient: 1.2 is not a discharge coefficient. Type a number from 0.3 to 1, or empty the cell.",
    ]
  `)
  const { report } = reduceTest(fakeJob(), hole({ area: '-3' }), fakeDevices())
  expect(report?.figures['flow-50']).toEqual(
    reduceTest(fakeJob(), fakeTest(), fakeDevices()).report?.figures['flow-50'],
  )
})

/** NIST SP 811: 1 in = 2.54 cm exactly, 1 ft = 0.3048 m exactly. */
test('units are switched and come back as typed', () => {
  const metric = switchTestUnits(hole({}), unitSets.SI)
  expect(metric.sheet.fieldCheck).toEqual({ area: '645', pressure: '50', flow: '1286', discharge: '' })
  expect(switchTestUnits(metric, unitSets.IP).sheet.fieldCheck).toEqual(hole({}).sheet.fieldCheck)
})
