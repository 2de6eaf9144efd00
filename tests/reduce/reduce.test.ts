import { describe, expect, test } from 'vitest'
import { figures } from '../../lib/reduce/figures/index.ts'
import { points } from '../../lib/reduce/points.ts'
import { reduce, workingOf } from '../../lib/reduce/reduce.ts'
import { reportSchema } from '../../lib/reduce/report.ts'
import { fakeRegression, fakeSheet, wholeBuilding } from './sheets.ts'

const flow50 = (overrides: Parameters<typeof fakeSheet>[0]) => reduce(fakeSheet(overrides)).figures['flow-50']?.value

const directionOutcome = (overrides: Parameters<typeof fakeSheet>[0]) =>
  reduce(fakeSheet(overrides)).checks.find(({ id }) => id === 'direction')?.outcome

const numberIn = (text: string | undefined, name: string) =>
  Number(text?.match(new RegExp(`(?:^|, )${name} = ([\\d.e-]+)`))?.[1])

describe('which figures a sheet allows', () => {
  test('readings alone give the figures that need no building', () => {
    expect(Object.keys(reduce(fakeSheet()).figures)).toEqual([
      'flow-50',
      'effective-leakage-area',
      'equivalent-leakage-area',
      'leakage-exponent',
      'leakage-coefficient',
      'flow-50-as-read',
      'flow-75',
      'flow-25',
      'flow-10',
      'flow-4',
    ])
  })

  test('everything typed: every figure of its subject', () => {
    const house = fakeRegression({ building: wholeBuilding, weatherShieldingFactor: 0.59 })
    const ducts = fakeSheet({
      subject: 'ducts',
      building: wholeBuilding,
      duct: { leakage: 'outside', airHandlerFlow: 1200 },
    })
    const found = new Set([...Object.keys(reduce(house).figures), ...Object.keys(reduce(ducts).figures)])
    expect(figures.map(({ id }) => id).filter((id) => !found.has(id))).toEqual([])
    expect(Object.keys(reduce(ducts).figures)).toEqual([
      'duct-flow-25',
      'duct-flow-25-per-floor-area',
      'duct-qn',
      'duct-share-of-air-handler',
      'flow-50',
      'leakage-exponent',
      'leakage-coefficient',
      'flow-50-as-read',
      'duct-flow-25-as-read',
      'flow-75',
      'flow-25',
      'flow-10',
      'flow-4',
    ])
    expect(reduce(ducts).figures['flow-25']?.value).toBe(reduce(ducts).figures['duct-flow-25']?.value)
    expect(reduce(ducts).figures['duct-flow-25']?.note).toContain('Leakage to outside.')
  })

  test('a report keeps to its schema', () => {
    const report = reduce(fakeRegression({ building: wholeBuilding, weatherShieldingFactor: 0.59 }))
    expect(reportSchema.parse(structuredClone(report))).toEqual(report)
  })
})

describe('units follow the sheet', () => {
  const metric = { flow: 'm3/h', temperature: 'degC', length: 'm' } as const
  test.each([
    [metric, 'm3/h', 'm3/(h.m2)', 'cm2', 'm3/h/Pa^n', 'L/s'],
    [{ ...metric, flow: 'L/s' }, 'L/s', 'L/(s.m2)', 'cm2', 'L/s/Pa^n', 'L/s'],
    [{ ...metric, flow: 'cfm' }, 'cfm', 'm3/(h.m2)', 'cm2', 'cfm/Pa^n', 'L/s'],
    [{ flow: 'cfm', temperature: 'degF', length: 'ft' }, 'cfm', 'cfm/ft2', 'in2', 'cfm/Pa^n', 'cfm'],
  ] as const)('%j', (units, flow, perArea, area, coefficient, ventilation) => {
    const { figures: found } = reduce(fakeSheet({ units, building: wholeBuilding }))
    expect(
      [
        'flow-50',
        'flow-50-per-floor-area',
        'effective-leakage-area',
        'leakage-coefficient',
        'ventilation-required',
      ].map((id) => found[id]?.unit),
    ).toEqual([flow, perArea, area, coefficient, ventilation])
  })
})

describe('signs', () => {
  const flows = { pressure: 50, flow: 1000 }
  test('a pressure may be typed with or without its minus sign; the baseline keeps its own', () => {
    const baseline = { before: [-2], after: [-2] }
    const signed = flow50({ points: [{ pressure: -50, flow: 1000 }], baseline })
    expect(flow50({ points: [flows], baseline })).toBe(signed)
    expect(signed).toBeCloseTo(1000 * (50 / 48) ** 0.65, 9)
  })

  test('pressurizing from below outdoors adds to the pressure', () => {
    expect(flow50({ direction: 'pressurize', points: [flows], baseline: { before: [-2], after: [] } })).toBeCloseTo(
      1000 * (50 / 52) ** 0.65,
      9,
    )
  })

  test('what may be a slip is asked about', () => {
    expect(directionOutcome({})).toBeUndefined()
    expect(directionOutcome({ direction: 'pressurize' })).toBe('doubtful')
    expect(directionOutcome({ points: [flows], baseline: { before: [2], after: [] } })).toBe('doubtful')
    expect(directionOutcome({ points: [flows], baseline: { before: [-2], after: [] } })).toBeUndefined()
  })
})

describe('several points of a one-point test', () => {
  const sheet = fakeSheet({
    points: [
      { pressure: -25, flow: 640 },
      { pressure: -52, flow: 1020 },
      { pressure: -40, flow: 870 },
    ],
  })

  test('the nearest to 50 Pa counts, and the note says which', () => {
    const { value, note } = reduce(sheet).figures['flow-50']!
    expect(value).toBeCloseTo(1020 * (50 / 52) ** 0.65, 9)
    expect(note).toContain('Uses point 2, the nearest to 50 Pa.')
  })

  test('every point is brought to 50 Pa', () => {
    const found = points(sheet)
    expect(found.map(({ used }) => used)).toEqual([false, true, false])
    expect(found[0]?.atReference).toBeCloseTo(640 * 2 ** 0.65, 9)
    expect(found[1]?.atReference).toBe(reduce(sheet).figures['flow-50']?.value)
  })

  test('ducts: the nearest to 25 Pa', () => {
    expect(points({ ...sheet, subject: 'ducts' }).map(({ used }) => used)).toEqual([true, false, false])
  })
})

describe('one-point factor', () => {
  test('multiplies what is at standard conditions, and says so', () => {
    const sheet = fakeSheet({ building: wholeBuilding })
    const [without, multiplied] = [reduce(sheet), reduce(sheet, { onePointFactor: true })]
    for (const id of ['flow-50', 'air-changes-50', 'effective-leakage-area', 'leakage-coefficient']) {
      expect(multiplied.figures[id]!.value / without.figures[id]!.value).toBeCloseTo(1.1, 12)
      expect(multiplied.figures[id]?.note).toContain('1.1')
    }
    expect(multiplied.figures['flow-50-as-read']).toEqual(without.figures['flow-50-as-read'])
    expect(
      workingOf(multiplied, 'air-changes-50').some(({ values }) => values.includes('one-point factor = 1.1')),
    ).toBe(true)
  })

  test('leaves regressions and ducts alone', () => {
    for (const sheet of [fakeRegression(), fakeSheet({ subject: 'ducts' })]) {
      expect(reduce(sheet, { onePointFactor: true })).toEqual(reduce(sheet))
    }
  })
})

describe('through the ranges of a device', () => {
  test('K × P^m, the same as the flow itself', () => {
    const device = { ranges: { wide: { coefficient: 110, exponent: 0.5 } } }
    const through = fakeSheet({ points: [{ pressure: -50, devicePressure: -82, range: 'wide' }], device })
    const shown = fakeSheet({ points: [{ pressure: -50, flow: 110 * Math.sqrt(82) }], device })
    expect(reduce(through).figures).toEqual(reduce(shown).figures)
  })
})

describe('working', () => {
  const sheet = fakeRegression({
    building: wholeBuilding,
    weatherShieldingFactor: 0.59,
    air: { indoor: 70, outdoor: 30 },
  })
  const report = reduce(sheet)

  test('the steps of a figure end with it and start at the baseline', () => {
    expect(workingOf(report, 'air-changes-50').map(({ step }) => step)).toEqual([
      'Baseline',
      'Pressure across the leaks',
      'Line through the points',
      'Scatter about the line',
      'Weighted line, to compare',
      '95 % half-width at P, here 50 Pa, as read',
      'Density of the air',
      'Indicated to actual flow',
      'Device to leaks',
      'Standard conditions',
      'Coefficient',
      'Scatter of one pressure reading',
      'Weight of each reading',
      'Part: the flow device',
      'Part: the pressure gauge',
      'Part: wind and the scatter of the readings',
      '95 % half-width at P, here 50 Pa',
      'Leakage flow at 50 Pa',
      'Air changes per hour at 50 Pa',
    ])
  })

  test('no air in what is as read, no readings in what rests on none', () => {
    expect(workingOf(report, 'flow-50-as-read').map(({ step }) => step)).not.toContain('Density of the air')
    expect(workingOf(report, 'ventilation-required')).toHaveLength(1)
  })

  test('a hand calculator gets from the printed numbers to the printed result', () => {
    const [step] = workingOf(report, 'flow-50').slice(-1)
    const byHand = numberIn(step?.values, 'C') * 50 ** numberIn(step?.values, 'n')
    expect(byHand / Number.parseFloat(step?.result ?? '')).toBeCloseTo(1, 4)
  })

  test('every figure has a step, and every step leads somewhere', () => {
    for (const id of Object.keys(report.figures)) expect(workingOf(report, id).length).toBeGreaterThan(0)
    for (const step of report.working) expect(step.for.length).toBeGreaterThan(0)
  })
})
