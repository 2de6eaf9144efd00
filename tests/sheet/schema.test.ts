import { expect, expectTypeOf, test } from 'vitest'
import { type Point, type Sheet, sheetSchema } from '../../lib/sheet/schema.ts'
import { fakeRegression, fakeSheet, wholeBuilding } from '../reduce/sheets.ts'

function ok(point: object): boolean {
  return sheetSchema.safeParse({ ...fakeSheet(), points: [point] }).success
}

test('a sheet passes unchanged', () => {
  const sheet: Sheet = {
    ...fakeRegression(),
    device: { ranges: { open: { coefficient: 500, exponent: 0.5, minPressure: 20 } }, calibrationDensity: 1.2041 },
    air: { indoor: 68, outdoor: 40, elevation: 500 },
    instrument: { pressurePercent: 1, pressureFloor: 0.25, flowPercent: 3 },
    building: wholeBuilding,
    duct: { leakage: 'total', airHandlerFlow: 1200 },
    weatherShieldingFactor: 0.59,
  }
  expect(sheetSchema.parse(sheet)).toEqual(sheet)
})

test('a point is a flow, or a device pressure with its range', () => {
  expectTypeOf<{ pressure: number; flow: number }>().toExtend<Point>()
  expectTypeOf<{ pressure: number; devicePressure: number; range: string }>().toExtend<Point>()
  expectTypeOf<{ pressure: number }>().not.toExtend<Point>()
  expect(ok({ pressure: 50, flow: 1000 })).toBe(true)
  expect(ok({ pressure: 50, devicePressure: 80, range: 'wide' })).toBe(true)
  expect(ok({ pressure: 50 })).toBe(false)
  expect(ok({ pressure: 50, devicePressure: 80 })).toBe(false)
  expect(ok({ pressure: 50, flow: Number.NaN })).toBe(false)
})
