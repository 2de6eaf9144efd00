/**
 * Several fans at once. Flows are summed, each after it was reduced on its own device, range, calibration and air; what a
 * sum is uncertain by is JCGM 100:2008, 5.1.2 (numbers by hand beside each check, R's in tests/published/r/fans.test.ts);
 * the density of air is that of any handbook: 0 degC 1.2922, 20 degC 1.2041 kg/m3.
 */
import { describe, expect, test } from 'vitest'
import '../../lib/job/with-fans.ts'
import { asFans, placeFans, setFan, withoutFan } from '../../lib/job/fans-edit.ts'
import { fanFactor } from '../../lib/job/fans.ts'
import { emptyFan, emptyPoint } from '../../lib/job/empty.ts'
import { material } from '../../lib/job/material.ts'
import { nextHouse } from '../../lib/job/next-house.ts'
import { readFansPaste } from '../../lib/job/paste-fans.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import {
  jobSchema,
  testSchema,
  type Device,
  type Test,
  type TypedPoint,
  type TypedSheet,
} from '../../lib/job/schema.ts'
import { switchTestUnits, unitSets } from '../../lib/job/units.ts'
import { reportOf } from '../../lib/report/content.ts'
import { workingOf } from '../../lib/reduce/reduce.ts'
import { fakeDevices, fakeJob, fakeTest, points } from './fake.ts'

const range = (name: string, coefficient: string, low = '', high = '') => ({
  name,
  coefficient,
  exponent: '0.5',
  minPressure: low,
  maxPressure: high,
})

const device = (id: string, more: Partial<Device> = {}): Device => ({
  ...fakeDevices()[0]!,
  id,
  name: `device ${id}`,
  serial: `no. ${id}`,
  flowUnit: 'cfm',
  calibrationDensity: '',
  ranges: [range('open', '100', '20', '300'), range('B', '50')],
  ...more,
})

const shown = (...rows: [pressure: string, ...flows: string[]][]): TypedPoint[] =>
  rows.map(([pressure, ...flows]) => ({
    pressure,
    flow: '',
    devicePressure: '',
    range: '',
    fans: flows.map((flow) => ({ flow, devicePressure: '', range: '' })),
  }))

const plain: Partial<TypedSheet> = {
  procedure: 'one-point',
  reading: 'fans',
  fans: [emptyFan(), emptyFan()],
  device: '',
  baselineBefore: '',
  baselineAfter: '',
  indoor: '',
  outdoor: '',
  flowPercent: '',
  exponentUncertainty: '',
}
const ofFans = (sheet: Partial<TypedSheet>, more: Partial<Test> = {}): Test =>
  fakeTest({ ...plain, ...sheet }, { onePointFactor: false, ...more })
const reduced = (sheet: Partial<TypedSheet>, devices: Device[] = []) => reduceTest(fakeJob(), ofFans(sheet), devices)
const told = (sheet: Partial<TypedSheet>, devices: Device[] = []) =>
  reduced(sheet, devices).problems.map(({ path, message }) => `${path} | ${message}`)

describe('the flow of a point', () => {
  /** 500 + 300 at 50 Pa; shares 0.625 and 0.375 of 2.5 % each: 2.5 % × √(0.625² + 0.375²) = 1.8222 %. */
  test('is the sum of what the fans show, and each errs by itself', () => {
    const { report } = reduced({ points: shown(['-50', '500', '300']) })
    const q50 = report!.figures['flow-50']!
    expect(q50.value).toBeCloseTo(800, 9)
    expect(q50.budget!.find(({ part }) => part === 'device')!.u).toBeCloseTo(0.018222, 5)
  })

  test('one fan alone is as sure as a test with one device', () => {
    const one = reduced({ points: shown(['-50', '800', '']) }).report!.figures['flow-50']!
    const lone = fakeTest({ ...plain, reading: 'flow', points: points(['-50', '800']) }, { onePointFactor: false })
    const same = reduceTest(fakeJob(), lone, []).report!.figures['flow-50']!
    expect(one.value).toBe(same.value)
    expect([one.low, one.high]).toEqual([same.low, same.high])
  })

  /** 3 % of 500 and 8 % of 300, halved: √(0.625² × 1.5² + 0.375² × 4²) = 1.7692 %. */
  test('each fan may have an uncertainty of its own', () => {
    const fans = [
      { ...emptyFan(), flowPercent: '3' },
      { ...emptyFan(), flowPercent: '8' },
    ]
    const { report } = reduced({ fans, points: shown(['-50', '500', '300']) })
    expect(report!.figures['flow-50']!.budget!.find(({ part }) => part === 'device')!.u).toBeCloseTo(0.017692, 5)
  })

  /** 100 × √100 = 1000 and 50 × √64 = 400. */
  test('through device pressures, each fan on its own range', () => {
    const fans = [
      { ...emptyFan(), name: 'hall', reading: 'device' as const, device: 'a' },
      { ...emptyFan(), reading: 'device' as const, device: 'b' },
    ]
    const read = [
      {
        ...emptyPoint(),
        pressure: '-50',
        fans: [
          { flow: '', devicePressure: '100', range: 'open' },
          { flow: '', devicePressure: '-64', range: 'B' },
        ],
      },
    ]
    const { report, problems, sheet } = reduced({ fans, points: read }, [device('a'), device('b')])
    expect(problems).toEqual([])
    expect(report!.figures['flow-50']!.value).toBeCloseTo(1400, 9)
    expect(sheet!.points[0]).toMatchObject({ fans: [{ name: 'hall, open' }, { name: 'fan 2, B' }] })
    const step = workingOf(report!, 'flow-50').find(({ formula }) => formula === 'Q = ΣQ')!
    expect(step.values).toBe(
      '“hall, open” 1000 (K = 100, Pdev = 100 Pa, m = 0.5) + “fan 2, B” 400 (K = 50, Pdev = 64 Pa, m = 0.5)',
    )
    expect(step.result).toBe('1400 cfm')
  })

  /** Densities of handbooks: 1.2922 / 1.2041 = 1.0732, and its root 1.0359. */
  test('air of another temperature in one fan', () => {
    expect(fanFactor('indicated', 1.2041, 0, 20)).toBeCloseTo(Math.sqrt(1.2922 / 1.2041), 3)
    expect(fanFactor('actual', 1.2041, 0, 20)).toBeCloseTo(1.2922 / 1.2041, 3)
    expect(fanFactor('indicated', 1.2, 20, 20)).toBeCloseTo(Math.sqrt(1.2 / 1.2041), 12)
    const air = { indoor: '68', outdoor: '68' }
    const fans = [emptyFan(), { ...emptyFan(), temperature: '32' }]
    const { report } = reduced({ ...air, fans, points: shown(['-50', '500', '300']) })
    const same = reduced({ ...air, points: shown(['-50', '500', '300']) }).report!
    const ratio = report!.figures['flow-50-as-read']!.value / same.figures['flow-50-as-read']!.value
    expect(ratio).toBeCloseTo((500 + 300 * 1.0359) / 800, 4)
  })

  /** Without temperatures nothing is corrected: not for the calibration of one device either. */
  test('without temperatures the flows stand as shown', () => {
    const fans = [{ ...emptyFan(), device: 'a' }, emptyFan()]
    const sheet = { fans, points: shown(['-50', '500', '300']) }
    expect(reduced(sheet, [device('a', { calibrationDensity: '1.1' })]).report!.figures['flow-50']!.value).toBeCloseTo(
      800,
    )
    const corrected = reduced({ ...sheet, indoor: '68', outdoor: '68' }, [device('a', { calibrationDensity: '1.1' })])
    const ref = reduced({ ...sheet, indoor: '68', outdoor: '68' }, [device('a')])
    const ratio = corrected.report!.figures['flow-50']!.value / ref.report!.figures['flow-50']!.value
    expect(ratio).toBeCloseTo((500 * Math.sqrt(1.1 / 1.2041) + 300) / 800, 9)
  })

  test('a fan that is off brings nothing; a row without any is asked about', () => {
    const { report } = reduced({ points: shown(['-50', '', '300']) })
    expect(report!.figures['flow-50']!.value).toBeCloseTo(300, 9)
    expect(told({ points: shown(['-50', '', '']) })).toEqual([
      'points.0 | Point 1: no fan has a reading, so the row is left out. Type one, or empty the row.',
    ])
  })

  test('a bad reading of one fan leaves the row out, and says of which', () => {
    const { sheet } = reduced({ points: shown(['-50', '500', '30O'], ['-49', '500', '290']) })
    expect(sheet!.points).toHaveLength(1)
    expect(told({ points: shown(['-50', '500', 'x'], ['-49', '500', '290']) })[0]).toMatch(
      /^points\.0\.fans\.1\.flow \| Point 1, fan 2, flow: “x” is not a number\./,
    )
    expect(told({ points: shown(['', '500', '290']) })[0]).toMatch(
      /^points\.0\.pressure \| Point 1, pressure: nothing typed/,
    )
  })

  test('a range that the device of the fan does not have, and no device at all', () => {
    const fans = [{ ...emptyFan(), reading: 'device' as const, device: 'a' }, emptyFan()]
    const row = { ...emptyPoint(), pressure: '-50', fans: [{ flow: '', devicePressure: '90', range: 'C' }] }
    expect(told({ fans, points: [row] }, [device('a')])[0]).toBe(
      'points.0.fans.0.range | Point 1, fan 1, range: “C” is not a range of “fan 1”. Choose “open”, “B”.',
    )
    expect(told({ fans: [{ ...fans[0]!, device: '' }, emptyFan()], points: [row] })[0]).toMatch(
      /^fans\.0\.device \| Fan 1, device: nothing chosen\./,
    )
  })
})

test('checks: a pressure outside the range of its fan, and the calibration most to be asked about', () => {
  const fans = [
    { ...emptyFan(), name: 'hall', reading: 'device' as const, device: 'a' },
    { ...emptyFan(), device: 'b' },
  ]
  const read = [
    {
      ...emptyPoint(),
      pressure: '-50',
      fans: [
        { flow: '', devicePressure: '12', range: 'open' },
        { flow: '300', devicePressure: '', range: '' },
      ],
    },
  ]
  const devices = [
    device('a', { calibrated: '2025-01-10', intervalMonths: '12' }),
    device('b', { calibrated: '2020-01-10', intervalMonths: '12' }),
  ]
  const job = fakeJob()
  const { report } = reduceTest(job, ofFans({ fans, points: read }, { date: '2025-06-01' }), devices)
  const check = (id: string) => report!.checks.find((one) => one.id === id)!
  expect(check('range-window')).toMatchObject({ outcome: 'bad', found: '12 Pa', expected: '20 to 300 Pa' })
  expect(check('range-window').text).toContain('Point 1 reads 12 Pa at the device, below what range “hall, open”')
  expect(check('calibration').text).toContain('“device b”')
})

describe('as typed', () => {
  test('going from one device to several keeps what was typed, and so does going back', () => {
    const before = fakeTest({ reading: 'device', device: 'a', points: points(['-50', '', '100', 'open']) }).sheet
    const after = { ...before, ...asFans(before) }
    expect(after.fans).toMatchObject([
      { reading: 'device', device: 'a' },
      { reading: 'flow', device: '' },
    ])
    expect(after.points[0]!.fans).toEqual([{ flow: '', devicePressure: '100', range: 'open' }])
    expect(after.points[0]).toMatchObject({ devicePressure: '100', range: 'open' })
    const typed = { ...after, points: setFan(after.points, 0, 1, { flow: '300' }) }
    expect(asFans({ ...typed, reading: 'flow' })).toEqual({ reading: 'fans' })
    expect(typed.points[0]!.fans![1]!.flow).toBe('300')
  })

  test('a new row carries the range of each fan on; a fan that goes takes its readings along', () => {
    const first = setFan([], 0, 0, { devicePressure: '100' })
    const chosen = setFan(first, 0, 0, { range: 'open' })
    const second = setFan(chosen, 1, 0, { devicePressure: '80' })
    expect(second[1]!.fans![0]).toEqual({ flow: '', devicePressure: '80', range: 'open' })
    const sheet = { ...ofFans({ points: shown(['-50', '1', '2']) }).sheet }
    expect(withoutFan(sheet, 0)).toMatchObject({ fans: [{}], points: [{ fans: [{ flow: '2' }] }] })
  })

  test('units: flows and temperatures are switched and come back as typed', () => {
    const fans = [{ ...emptyFan(), temperature: '50' }, emptyFan()]
    const before = ofFans({ fans, points: shown(['-50', '500', '300']) })
    const metric = switchTestUnits(before, unitSets.SI)
    expect(metric.sheet.points[0]!.fans![0]!.flow).toBe('850')
    expect(Number(metric.sheet.fans![0]!.temperature)).toBeCloseTo(10, 1)
    const back = switchTestUnits(metric, unitSets.IP)
    expect(back.sheet.points).toEqual(before.sheet.points)
    expect(back.sheet.fans).toEqual(before.sheet.fans)
  })

  test('the next house has the fans and nothing of what was read', () => {
    const job = { ...fakeJob(), tests: [ofFans({ points: shown(['-50', '500', '300']) })] }
    const [next] = nextHouse(job).tests
    expect(next!.sheet.fans).toHaveLength(2)
    expect(next!.sheet.reading).toBe('fans')
    expect(JSON.stringify(next!.sheet.points)).not.toContain('500')
  })

  test('what an older version wrote is read as before', () => {
    const old = fakeTest()
    expect(testSchema.parse(structuredClone(old))).toEqual(old)
    const job = { ...fakeJob(), tests: [ofFans({ points: shown(['-50', '500', '300']) })] }
    expect(jobSchema.parse(structuredClone(job))).toEqual(job)
  })
})

describe('paste of a table', () => {
  const flows = [{ reading: 'flow' as const }, { reading: 'flow' as const }]
  const mixed = [{ reading: 'device' as const }, { reading: 'flow' as const }]

  test('with a heading, tabs, and a fan that is off', () => {
    const text = 'Pressure\tFan 1\tFan 2\n-50\t500\t300\n-40\t430\t-\n-30\t360\toff\n'
    const { rows, problems } = readFansPaste(text, flows)
    expect(problems).toEqual([])
    expect(rows).toEqual(shown(['-50', '500', '300'], ['-40', '430', ''], ['-30', '360', '']))
  })

  test('device pressure and range of one fan, flow of the other; lines may be numbered', () => {
    const text = '1;-50;120;open;300\n2;-40;95;B;'
    const { rows } = readFansPaste(text, mixed)
    expect(
      rows.map(({ pressure, fans }) => [pressure, fans![0]!.devicePressure, fans![0]!.range, fans![1]!.flow]),
    ).toEqual([
      ['-50', '120', 'open', '300'],
      ['-40', '95', 'B', ''],
    ])
  })

  test('a table of more fans is not taken, and says so; a word in place of a number neither', () => {
    expect(readFansPaste('-50\t1\t2\t3\n', flows)).toEqual({
      rows: [],
      problems: [
        'Line 1: 4 columns, where the fans of this test have 3. Set up the fans as the table has them, and paste it again.',
      ],
    })
    expect(readFansPaste('-50\t1\tmany\n-40\t1\t2\n', flows)).toMatchObject({
      rows: [{ pressure: '-40' }],
      problems: ['Line 1: “many” is not a number.'],
    })
    expect(readFansPaste('hello\tworld', flows).problems).toEqual(['No line begins with a number: nothing was pasted.'])
  })

  test('goes over the rows from where it was pasted', () => {
    const placed = placeFans(
      shown(['-60', '1', '1'], ['-50', '1', '1']),
      1,
      shown(['-49', '2', '2'], ['-39', '3', '3']),
    )
    expect(placed.map(({ pressure }) => pressure)).toEqual(['-60', '-49', '-39'])
  })
})

test('form items: each fan by its number, and the flow of all', () => {
  const fans = [
    { ...emptyFan(), name: 'hall', device: 'a' },
    { ...emptyFan(), reading: 'device' as const, device: 'b' },
  ]
  const read = [
    {
      ...emptyPoint(),
      pressure: '-50',
      fans: [
        { flow: '500', devicePressure: '', range: '' },
        { flow: '', devicePressure: '64', range: 'B' },
      ],
    },
  ]
  const final = ofFans({ fans, points: read }, { role: 'final' })
  const { items } = material({ ...fakeJob(), tests: [final] }, [device('a'), device('b')])
  expect(items['final/flow-of-all-fans']).toMatchObject({ value: 900, unit: 'cfm' })
  expect(items['final/fan-count']).toMatchObject({ value: 2 })
  expect(items['final/fan-1-flow']).toMatchObject({ value: 500, label: 'flow as shown', group: 'final, fan 1' })
  expect(items['final/fan-2-device-pressure']).toMatchObject({ value: 64, unit: 'Pa' })
  expect(items['final/fan-2-range']).toMatchObject({ text: 'B' })
  expect(items['final/fan-2-device-serial']).toMatchObject({ text: 'no. b' })
})

test('report: the sum, each flow, and what was read at each fan', () => {
  const fans = [
    { ...emptyFan(), name: 'hall', device: 'a' },
    { ...emptyFan(), reading: 'device' as const, device: 'b' },
  ]
  const rows = (['-50', '-30'] as const).map((pressure, at) => ({
    pressure,
    flow: '',
    devicePressure: '',
    range: '',
    fans: [
      { flow: '500', devicePressure: '', range: '' },
      { flow: '', devicePressure: at === 0 ? '64' : '', range: 'B' },
    ],
  }))
  const both = ofFans({ fans, points: rows })
  const content = reportOf({ ...fakeJob(), tests: [both] }, both, [device('a'), device('b')], undefined)
  expect(content.readings.rows.map((row) => row.slice(1, 4))).toEqual([
    ['−50', '900', '500 + 400'],
    ['−30', '500', '500'],
  ])
  expect(content.readings.foot.join(' ')).toContain(
    'Hall (device a, no. a), cfm, by point: 1: 500; 2: 500. Fan 2 (device b, no. b), Pa at the device, by point: 1: 64 B; 2: off.',
  )
  expect(content.facts.map(({ value }) => value)).toContain('2 fans together, their flows summed')
})
