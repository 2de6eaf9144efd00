import { describe, expect, test } from 'vitest'
import { type Item, materialSchema } from '../../lib/form/material.ts'
import { demoDevice, demoJob, demoTester } from '../../lib/job/demo.ts'
import { emptyJob, emptyTest } from '../../lib/job/empty.ts'
import { jobName, material } from '../../lib/job/material.ts'
import { roleKeys } from '../../lib/job/roles.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import { deviceSchema, jobSchema, testerSchema } from '../../lib/job/schema.ts'
import { unitSets } from '../../lib/job/units.ts'
import { symbol } from '../../lib/units/symbol.ts'
import { write } from '../../lib/units/write.ts'
import { fakeDevices, fakeJob, fakeTest, points } from './fake.ts'

function shown(item: Item): string {
  if (item.kind === 'quantity') {
    const limit = item.limit === undefined ? '' : ` (limit ${item.limit})`
    return `${write(item.value, { decimals: item.decimals })} ${symbol(item.unit)}`.trim() + limit
  }
  if (item.kind === 'date') return item.iso
  return item.kind === 'text' ? item.text : `${item.value} of ${item.options.map(({ value }) => value).join(', ')}`
}

const lines = (job = demoJob()) =>
  Object.entries(material(job, [demoDevice()], { now: new Date(2026, 1, 12) }).items).map(
    ([key, item]) => `${key} | ${item.group}: ${item.label} | ${shown(item)}`,
  )

const range = (sheet: Parameters<typeof fakeTest>[0]) => {
  const job = { ...fakeJob(), tests: [fakeTest(sheet)] }
  const item = material(job, fakeDevices()).items['after/range']
  return item && shown(item)
}

describe('the demo job', () => {
  test('fits the schemas and has no problem', () => {
    expect(jobSchema.parse(demoJob())).toEqual(demoJob())
    expect(deviceSchema.parse(demoDevice())).toEqual(demoDevice())
    expect(testerSchema.parse(demoTester())).toEqual(demoTester())
    for (const one of demoJob().tests) expect(reduceTest(demoJob(), one, [demoDevice()]).problems).toEqual([])
  })

  test('comes to the figures of its story', () => {
    const { items } = material(demoJob(), [demoDevice()])
    const value = (key: string) => (items[key]?.kind === 'quantity' ? items[key].value : NaN)
    expect(value('before/flow-50')).toBeCloseTo(1445, 0)
    expect(value('after/flow-50')).toBeCloseTo(753.7, 1)
    expect(value('after/air-changes-50')).toBeCloseTo(2.86, 2)
    expect(value('before+after/reduction-percent')).toBeCloseTo(47.84, 1)
    const after = demoJob().tests[1]
    const figure = after && reduceTest(demoJob(), after, [demoDevice()]).report?.figures['air-changes-50']
    // By hand, in a calm: s² = (0.4²/2 + 4 × 0.2²)/5, s = 0.219 Pa; baseline 0.65 s √2/2/50.3 = 0.200 %, drift
    // 0.65 × 0.4/√12/50.3 = 0.149 %, one reading √(0.5² + (0.65 s/50.3)²) = 0.575 %. Twice the root of 2.5², 0.325²,
    // (5 × (ln(50/50.3) − 0.1123))², 1.5² and these: 6.115 % of 2.860.
    expect((figure?.high ?? NaN) - (figure?.value ?? NaN)).toBeCloseTo(0.1749, 4)
  })
})

describe('what a form can be filled with', () => {
  test('the reports of its tests, a file each and one of all', () => {
    const { files = {} } = material(demoJob(), [demoDevice()])
    expect(Object.entries(files).map(([key, { name }]) => `${key}: ${name}`)).toEqual([
      'report: report.pdf',
      'before/report: report-before.pdf',
      'after/report: report-after.pdf',
      'duct system 1/report: report-duct-system-1.pdf',
    ])
    expect(material(emptyJob(unitSets.IP), []).files).toEqual({})
  })

  test('a unit typed behind a number adds no decimals to it', () => {
    const job = demoJob()
    job.building.volume = '15,810 ft3'
    job.building.height = '17.5 ft'
    const { items } = material(job, [demoDevice()])
    expect(items['job/volume']).toMatchObject({ value: 15810, decimals: 0 })
    expect(items['job/height']).toMatchObject({ value: 17.5, decimals: 1 })
  })

  test('every item of the demo job', () => {
    expect(lines()).toMatchInlineSnapshot(`
      [
        "job/address | building: address in one line | 14 Tannery Row, Marrowby, Larch County",
        "job/street | building: street address | 14 Tannery Row",
        "job/town | building: town | Marrowby",
        "job/state | building: state | Larch County",
        "job/permit | building: permit number | MB-2025-1183",
        "job/program | building: program number | LC7-2026-0187",
        "job/builder | building: builder or contractor | Old Tannery Joinery",
        "job/floor-area | building: floor area | 1860 ft²",
        "job/volume | building: volume | 15810 ft³",
        "job/enclosure-area | building: enclosure area | 4420 ft²",
        "job/height | building: height | 17 ft",
        "job/bedrooms | building: bedrooms | 3",
        "job/stories | building: stories | 2",
        "job/climate-zone | building: climate zone | 5A",
        "job/area-source | building: how areas were obtained | plans of plans, measured, estimated",
        "job/elevation | building: elevation | 620 ft",
        "tester/name | tester: tester | Ines Halvorsen",
        "tester/company | tester: company | Bellwether Lane Testing",
        "tester/licence | tester: licence | T-0442",
        "tester/licence-expiry | tester: licence expiry | 2027-06-30",
        "tester/phone | tester: phone | 555-0142",
        "tester/email | tester: e-mail | ines@bellwether.example",
        "before/flow-50 | before: CFM50 | 1445 cfm",
        "before/air-changes-50 | before: ACH50 | 5.48 1/h (limit 3)",
        "before/flow-50-per-enclosure-area | before: CFM50/ft² of enclosure | 0.33 cfm/ft²",
        "before/flow-50-per-floor-area | before: CFM50/ft² of floor | 0.78 cfm/ft²",
        "before/flow-75-per-enclosure-area | before: CFM75/ft² of enclosure | 0.43 cfm/ft²",
        "before/flow-10-per-enclosure-area | before: CFM10/ft² of enclosure | 0.115 cfm/ft²",
        "before/effective-leakage-area | before: ELA | 79.4 in²",
        "before/equivalent-leakage-area | before: EqLA | 149.1 in²",
        "before/normalized-leakage-area | before: NLA10 | 3.37 in²/100 ft²",
        "before/specific-leakage-area | before: SLA | 0.00030",
        "before/normalized-leakage | before: NL | 0.397",
        "before/leakage-exponent | before: n | 0.650",
        "before/leakage-coefficient | before: C | 113.7 cfm/Paⁿ",
        "before/flow-50-as-read | before: CFM50 as read | 1509 cfm",
        "before/flow-75 | before: CFM75 | 1881 cfm",
        "before/flow-25 | before: CFM25 | 921 cfm",
        "before/flow-10 | before: CFM10 | 508 cfm",
        "before/flow-4 | before: CFM4 | 280 cfm",
        "before/natural-air-changes | before: natural ACH | 0.27 1/h",
        "before/ventilation-required | before: ventilation required | 85.8 cfm",
        "before/limit | before: limit of ACH50 | 3.00 1/h",
        "before/verdict | before: verdict | fail of pass, fail",
        "before/date | before: date of test | 2026-01-12",
        "before/direction | before: direction | depressurize of depressurize, pressurize",
        "before/procedure | before: procedure | one-point of one-point, two-point, astm-e779, iso-9972, astm-e3158",
        "before/stage | before: stage | existing of rough-in, rough-in without air handler, final, existing",
        "before/wind | before: wind | light of calm, light, windy",
        "before/indoor | before: indoor temperature | 68 °F",
        "before/outdoor | before: outdoor temperature | 41 °F",
        "before/device | before: device | Fan 2",
        "before/device-serial | before: device serial number | F2-0031",
        "before/device-calibrated | before: device calibrated on | 2025-02-04",
        "before/baseline-mean | before: baseline, mean | -1.2 Pa",
        "before/range | before: range | wide of wide, middle, narrow",
        "before/pressure | before: pressure as read | -50.8 Pa",
        "before/flow-as-shown | before: flow as shown | 1501 cfm",
        "after/flow-50 | after: CFM50 | 754 cfm",
        "after/air-changes-50 | after: ACH50 | 2.86 1/h (limit 3)",
        "after/flow-50-per-enclosure-area | after: CFM50/ft² of enclosure | 0.17 cfm/ft²",
        "after/flow-50-per-floor-area | after: CFM50/ft² of floor | 0.41 cfm/ft²",
        "after/flow-75-per-enclosure-area | after: CFM75/ft² of enclosure | 0.22 cfm/ft²",
        "after/flow-10-per-enclosure-area | after: CFM10/ft² of enclosure | 0.060 cfm/ft²",
        "after/effective-leakage-area | after: ELA | 41.4 in²",
        "after/equivalent-leakage-area | after: EqLA | 77.8 in²",
        "after/normalized-leakage-area | after: NLA10 | 1.76 in²/100 ft²",
        "after/specific-leakage-area | after: SLA | 0.00015",
        "after/normalized-leakage | after: NL | 0.207",
        "after/leakage-exponent | after: n | 0.650",
        "after/leakage-coefficient | after: C | 59.3 cfm/Paⁿ",
        "after/flow-50-as-read | after: CFM50 as read | 787 cfm",
        "after/flow-75 | after: CFM75 | 981 cfm",
        "after/flow-25 | after: CFM25 | 480 cfm",
        "after/flow-10 | after: CFM10 | 265 cfm",
        "after/flow-4 | after: CFM4 | 146 cfm",
        "after/natural-air-changes | after: natural ACH | 0.14 1/h",
        "after/ventilation-required | after: ventilation required | 85.8 cfm",
        "after/limit | after: limit of ACH50 | 3.00 1/h",
        "after/verdict | after: verdict | pass of pass, fail",
        "after/date | after: date of test | 2026-02-11",
        "after/direction | after: direction | depressurize of depressurize, pressurize",
        "after/procedure | after: procedure | one-point of one-point, two-point, astm-e779, iso-9972, astm-e3158",
        "after/stage | after: stage | final of rough-in, rough-in without air handler, final, existing",
        "after/wind | after: wind | calm of calm, light, windy",
        "after/indoor | after: indoor temperature | 68 °F",
        "after/outdoor | after: outdoor temperature | 41 °F",
        "after/instrument-figure | after: instrument’s own figure | 785 cfm",
        "after/device | after: device | Fan 2",
        "after/device-serial | after: device serial number | F2-0031",
        "after/device-calibrated | after: device calibrated on | 2025-02-04",
        "after/baseline-mean | after: baseline, mean | -1.0 Pa",
        "after/range | after: range | middle of wide, middle, narrow",
        "after/pressure | after: pressure as read | -51.3 Pa",
        "after/flow-as-shown | after: flow as shown | 790 cfm",
        "duct system 1/duct-flow-25 | duct system 1: CFM25 | 71 cfm",
        "duct system 1/duct-flow-25-per-floor-area | duct system 1: CFM25/100 ft² | 3.8 cfm/100 ft² (limit 4)",
        "duct system 1/duct-qn | duct system 1: Qn | 0.038 cfm/ft²",
        "duct system 1/duct-share-of-air-handler | duct system 1: % of air-handler flow | 6.7 %",
        "duct system 1/flow-50 | duct system 1: CFM50 | 107 cfm",
        "duct system 1/leakage-exponent | duct system 1: n | 0.600",
        "duct system 1/leakage-coefficient | duct system 1: C | 10.3 cfm/Paⁿ",
        "duct system 1/flow-50-as-read | duct system 1: CFM50 as read | 107 cfm",
        "duct system 1/duct-flow-25-as-read | duct system 1: CFM25 as read | 70 cfm",
        "duct system 1/flow-75 | duct system 1: CFM75 | 137 cfm",
        "duct system 1/flow-10 | duct system 1: CFM10 | 41 cfm",
        "duct system 1/flow-4 | duct system 1: CFM4 | 24 cfm",
        "duct system 1/limit | duct system 1: limit of CFM25/100 ft² | 4.0 cfm/100 ft²",
        "duct system 1/verdict | duct system 1: verdict | pass of pass, fail",
        "duct system 1/date | duct system 1: date of test | 2026-02-11",
        "duct system 1/direction | duct system 1: direction | pressurize of depressurize, pressurize",
        "duct system 1/procedure | duct system 1: procedure | one-point of one-point, two-point, astm-e779, iso-9972, astm-e3158",
        "duct system 1/stage | duct system 1: stage | final of rough-in, rough-in without air handler, final, existing",
        "duct system 1/leakage | duct system 1: leakage | total of total, outside",
        "duct system 1/indoor | duct system 1: indoor temperature | 68 °F",
        "duct system 1/outdoor | duct system 1: outdoor temperature | 66 °F",
        "duct system 1/air-handler-flow | duct system 1: air handler flow | 1050 cfm",
        "duct system 1/device | duct system 1: device | Fan 2",
        "duct system 1/device-serial | duct system 1: device serial number | F2-0031",
        "duct system 1/device-calibrated | duct system 1: device calibrated on | 2025-02-04",
        "duct system 1/baseline-mean | duct system 1: baseline, mean | 0.1 Pa",
        "duct system 1/range | duct system 1: range | narrow of wide, middle, narrow",
        "duct system 1/pressure | duct system 1: pressure as read | 25.4 Pa",
        "duct system 1/flow-as-shown | duct system 1: flow as shown | 71 cfm",
        "before+after/reduction | before and after: reduction of CFM50 | 691 cfm",
        "before+after/reduction-percent | before and after: reduction in percent | 48 %",
        "before+after/reduction-uncertainty | before and after: uncertainty of the reduction of CFM50, 95 % | 56 cfm",
        "before+after/reduction-percent-uncertainty | before and after: uncertainty of the percentage, 95 % | 1.8 %",
        "today | today: today’s date | 2026-02-12",
      ]
    `)
  })

  test('fits the schema', () => {
    const all = material(demoJob(), [demoDevice()])
    expect(materialSchema.parse(all)).toEqual(all)
  })

  test('an empty job offers today and nothing else', () => {
    expect(lines(emptyJob(unitSets.SI))).toEqual(['today | today: today’s date | 2026-02-12'])
  })

  test('bad cells and impossible days are left out', () => {
    const job = fakeJob({ volume: '0', floorArea: 'abc', town: '  ' })
    job.tester.licenceExpiry = '2026-02-30'
    job.tests = [fakeTest({ indoor: 'warm' }, { date: '2026-13-01' })]
    const { items } = material(job, fakeDevices())
    const left = [
      'job/volume',
      'job/floor-area',
      'job/town',
      'tester/licence-expiry',
      'after/indoor',
      'after/date',
      'after/air-changes-50',
    ]
    expect(left.filter((key) => key in items)).toEqual([])
    expect('after/flow-50' in items).toBe(true)
  })

  test('a role used twice never overwrites', () => {
    const tests = ['after', 'after', '', ' final '].map((role) => emptyTest(role, 'enclosure', unitSets.IP))
    expect([...roleKeys(tests).values()]).toEqual(['after', 'after (2)', 'test 3', 'final'])
  })

  test('several ranges stand in a line; rows that were not used do not count', () => {
    const two = points(['-50', '790', '', 'wide'], ['-40', '680', '', 'middle'], ['-30', '560', '', 'middle'])
    expect(range({ points: two })).toBe('wide of wide, middle, narrow')
    expect(range({ points: two, procedure: 'astm-e779' })).toBe('wide, middle')
    expect(range({ points: points(['-50', '790']) })).toBeUndefined()
  })

  test('a pair in two flow units is brought to the later one', () => {
    const job = fakeJob()
    const [before, after] = job.tests
    if (!before || !after) throw new Error('the demo job lacks a test')
    const metric = { flow: 'm3/h', temperature: 'degF', length: 'ft' } as const
    job.tests = [{ ...before, units: metric, sheet: { ...before.sheet, points: points(['-50.8', '2550.2']) } }, after]
    const { items } = material(job, fakeDevices())
    const reduction = items['before+after/reduction']
    expect(reduction && shown(reduction)).toBe('691 cfm')
  })

  test('a job is called by its street, else by a number it has', () => {
    expect(jobName(fakeJob())).toBe('14 Tannery Row')
    expect(jobName(fakeJob({ street: ' ' }))).toBe('MB-2025-1183')
    expect(jobName(emptyJob(unitSets.IP))).toBe('Job without an address')
  })
})

const quantityIn = (items: Record<string, Item>, key: string) => {
  const item = items[key]
  return item?.kind === 'quantity' ? item.value : NaN
}

const choiceIn = (items: Record<string, Item>, key: string) => {
  const item = items[key]
  return item?.kind === 'choice' ? item.value : undefined
}

describe('two tests together', () => {
  test('a reduction has its uncertainty; one device used for both cancels in the percentage', () => {
    const { items } = material(demoJob(), fakeDevices())
    // By hand: both tests about 5.2 %, of which 5 % is the device's: 52.2 % × √(2 × (5.18² − 5²)) % ≈ 1.0 %.
    const percent = quantityIn(items, 'before+after/reduction-percent-uncertainty')
    expect(percent).toBeGreaterThan(0.5)
    // Two single readings in a light wind: about 0.7 % of the baseline and 1 % of the reading each.
    expect(percent).toBeLessThan(2)
    const apart = fakeJob()
    apart.tests[0]!.sheet.device = ''
    expect(
      quantityIn(material(apart, fakeDevices()).items, 'before+after/reduction-percent-uncertainty'),
    ).toBeGreaterThan(3)
    expect(quantityIn(items, 'before+after/reduction-uncertainty')).toBeGreaterThan(30)
  })

  test('one role in two directions has a mean', () => {
    const job = fakeJob()
    const down = fakeTest({ indoor: '', outdoor: '', points: points(['-50', '1000']) })
    const up = fakeTest({ indoor: '', outdoor: '', direction: 'pressurize', points: points(['50', '1100']) })
    const still = { baselineBefore: '', baselineAfter: '' }
    job.tests = [down, up].map((one) => Object.assign(one, { role: 'final', sheet: { ...one.sheet, ...still } }))
    const { items } = material(job, fakeDevices())
    expect(quantityIn(items, 'final, both directions/flow-50')).toBeCloseTo(1050, 9)
    // 1050 cfm over 15810 ft³ is 60 × 1050 / 15810 = 3.98 ACH50: one direction alone meets 4.0, the other does not.
    const limited = { limit: 'own', ownLimit: '4' }
    for (const one of job.tests) Object.assign(one, limited)
    const set = material(job, fakeDevices()).items
    expect(choiceIn(set, 'final/verdict')).toBe('pass')
    expect(choiceIn(set, 'final (2)/verdict')).toBe('fail')
    expect(choiceIn(set, 'final, both directions/verdict')).toBe('pass')
    expect(quantityIn(set, 'final, both directions/limit')).toBe(4)
    job.tests[1]!.ownLimit = '5'
    expect(material(job, fakeDevices()).items).not.toHaveProperty(['final, both directions/verdict'])
    const alone = material({ ...job, tests: [job.tests[0]!] }, fakeDevices()).items
    expect(Object.keys(alone).some((key) => key.includes('both directions'))).toBe(false)
  })

  test('several duct systems are added up over the floor area; not while one is missing or of another kind', () => {
    const job = fakeJob()
    const ducts = job.tests[2]!
    const second = { ...ducts, role: 'duct system 2' }
    const both = material({ ...job, tests: [ducts, second] }, fakeDevices()).items
    const single = quantityIn(both, 'duct system 1/duct-flow-25')
    expect(quantityIn(both, 'duct systems/duct-flow-25')).toBeCloseTo(2 * single, 9)
    expect(quantityIn(both, 'duct systems/duct-flow-25-per-floor-area')).toBeCloseTo((200 * single) / 1860, 9)
    // 100 × 142 / 1860 = 7.6 cfm per 100 ft²: each system alone is within 6, both together are not.
    const limit = { limit: 'own', ownLimit: '6' }
    const limited = [
      { ...ducts, ...limit },
      { ...second, ...limit },
    ]
    const set = material({ ...job, tests: limited }, fakeDevices()).items
    expect(set['duct system 1/verdict']).toMatchObject({ value: '', why: expect.stringMatching(/whole house/) })
    expect(choiceIn(set, 'duct systems/verdict')).toBe('fail')
    expect(quantityIn(both, 'duct systems/duct-share-of-air-handler')).toBeCloseTo((100 * single) / 1050, 9)
    for (const other of [{ ductLeakage: 'outside' as const }, { points: [] }]) {
      const mixed = { ...second, sheet: { ...second.sheet, ...other } }
      const { items } = material({ ...job, tests: [ducts, mixed] }, fakeDevices())
      expect(items).not.toHaveProperty(['duct systems/duct-flow-25'])
    }
  })

  test('two pressures and the threshold of corrections reach the figures', () => {
    const typed = { procedure: 'two-point', points: points(['-51', '1000'], ['-13.5', '406.126']) } as const
    const job = fakeJob()
    job.tests = [fakeTest({ ...typed, corrections: 'threshold' })]
    const { items } = material(job, fakeDevices())
    // Baseline −1 Pa; 27 °F and 620 ft are within the thresholds: ln(1000/406.126)/ln 4 = 0.65.
    expect(quantityIn(items, 'after/leakage-exponent')).toBeCloseTo(0.65, 5)
    expect(quantityIn(items, 'after/flow-50')).toBeCloseTo(1000, 9)
  })
})
