import { describe, expect, test } from 'vitest'
import { combine } from '../../lib/reduce/combine.ts'
import { reduce } from '../../lib/reduce/reduce.ts'
import { verdict, publishedLimit } from '../../lib/limits/index.ts'
import { fakeSheet, wholeBuilding } from './sheets.ts'

const whole = { building: wholeBuilding, weatherShieldingFactor: 0.59 }
const down = fakeSheet({ points: [{ pressure: -50, flow: 1000 }], ...whole })
const up = fakeSheet({ direction: 'pressurize', points: [{ pressure: 50, flow: 1100 }], ...whole })

describe('both directions', () => {
  const [first, second] = [reduce(down), reduce(up)]
  const both = combine(first, second)

  test('means of values and limits, each figure with its working', () => {
    const mean = both.figures['flow-50']!
    expect(mean.value).toBeCloseTo(1050, 9)
    expect(mean.low).toBeCloseTo((first.figures['flow-50']!.low! + second.figures['flow-50']!.low!) / 2, 9)
    expect(both.figures['air-changes-50']?.value).toBeCloseTo((1050 * 60) / 20_400, 9)
    expect(both.working.find((step) => step.for.includes('flow-50'))).toMatchObject({
      values: 'depressurizing = 1000 cfm, pressurizing = 1100 cfm',
      result: '1050 cfm',
    })
  })

  test('what belongs to one line has no mean; what rests on no reading stays; a fan follows from the mean', () => {
    for (const id of ['leakage-exponent', 'leakage-coefficient', 'correlation']) {
      expect(both.figures).not.toHaveProperty(id)
    }
    expect(both.figures['ventilation-required']).toEqual(first.figures['ventilation-required'])
    const credit = both.figures['infiltration-credit']!.value
    expect(both.figures['fan-required']?.value).toBeCloseTo(102 - credit, 9)
    expect(both.figures['fan-required-one-way']?.value).toBeCloseTo(102 - credit ** 2 / 102, 9)
  })

  test('other units are brought to those of the first; what only one has is left out', () => {
    const metric = reduce(
      fakeSheet({
        direction: 'pressurize',
        units: { flow: 'm3/h', temperature: 'degC', length: 'm' },
        points: [{ pressure: 50, flow: (1100 * 0.028316846592 * 3600) / 60 }],
      }),
    )
    const mixed = combine(first, metric)
    expect(mixed.figures['flow-50']).toMatchObject({ unit: 'cfm' })
    expect(mixed.figures['flow-50']?.value).toBeCloseTo(1050, 9)
    expect(mixed.figures).not.toHaveProperty('air-changes-50')
  })

  test('directions far apart are asked about', () => {
    const outcome = (flow: number) =>
      combine(first, reduce({ ...up, points: [{ pressure: 50, flow }] })).checks.map((check) => check.outcome)
    expect(outcome(1100)).toEqual(['good'])
    expect(outcome(1400)).toEqual(['doubtful'])
    expect(combine({ ...first, figures: {} }, second).checks).toEqual([])
  })
})

const perEnclosure = (direction: 'pressurize' | 'depressurize', perArea: number) =>
  reduce(
    fakeSheet({
      direction,
      points: [{ pressure: direction === 'pressurize' ? 75 : -75, flow: perArea * 10_000 }],
      building: { enclosureArea: 10_000 },
    }),
  )

/**
 * A city's archived certificate of a large building: pressurizing 0.2626, depressurizing 0.2343 cfm75/ft2, mean 0.248,
 * met against 0.25 (the limit of the U.S. Army Corps of Engineers).
 */
test('printed: 0.2626 and 0.2343 cfm75/ft2 have the mean 0.248, which meets 0.25', () => {
  const figure = combine(perEnclosure('depressurize', 0.2343), perEnclosure('pressurize', 0.2626)).figures[
    'flow-75-per-enclosure-area'
  ]!
  expect(figure.value).toBeCloseTo(0.248, 3)
  const limit = publishedLimit('army-corps-per-enclosure-area')!
  expect(verdict(figure, limit).meets).toBe(true)
  expect(verdict(perEnclosure('pressurize', 0.2626).figures['flow-75-per-enclosure-area']!, limit).meets).toBe(false)
})
