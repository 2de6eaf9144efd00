import { expect, test } from 'vitest'
import { SheetError, cellName } from '../../lib/reduce/errors.ts'
import { reduce } from '../../lib/reduce/reduce.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'
import { fakeRegression, fakeSheet } from './sheets.ts'

function refused(sheet: unknown): string[] {
  try {
    reduce(sheet as Sheet)
  } catch (error) {
    if (!(error instanceof SheetError)) throw error
    return error.issues.map(({ path, code, message }) => `${code} at ${path.join('.')}: ${message}`)
  }
  throw new Error('The sheet was not refused.')
}

const point = { pressure: -50, flow: 1000 }

test('a sheet without readings is refused with what to type', () => {
  expect(refused(fakeSheet({ points: [] }))).toMatchInlineSnapshot(`
    [
      "too few at points: Points are empty: type a pressure and its flow.",
    ]
  `)
  expect(refused({ ...fakeSheet(), points: [{}] })).toMatchInlineSnapshot(`
    [
      "invalid at points.0.pressure: Point 1, pressure is missing or not usable: type a number.",
      "invalid at points.0.flow: Point 1, flow is missing or not usable: type a number.",
    ]
  `)
  expect(refused({ ...fakeSheet(), points: [{ pressure: 50, devicePressure: 20 }] })).toMatchInlineSnapshot(`
    [
      "invalid at points.0.range: Point 1, range is missing or not usable: choose one.",
    ]
  `)
  expect(refused({})).toMatchInlineSnapshot(`
    [
      "invalid at subject: Subject is missing or not usable: choose enclosure or ducts.",
      "invalid at procedure: Procedure is missing or not usable: choose one-point or two-point or astm-e779 or iso-9972 or astm-e3158.",
      "invalid at direction: Direction is missing or not usable: choose depressurize or pressurize.",
      "invalid at units: Units is missing or not usable: give an object.",
      "invalid at baseline: Baseline is missing or not usable: give an object.",
      "invalid at points: Points is missing or not usable: give an array.",
      "invalid at flowBasis: Flow basis is missing or not usable: choose indicated or actual.",
    ]
  `)
  expect(refused(null)).toMatchInlineSnapshot(`
    [
      "invalid at : The sheet is missing or not usable: give an object.",
    ]
  `)
})

test('numbers that are not finite are refused by the name of the cell', () => {
  expect(refused(fakeSheet({ points: [{ pressure: Number.NaN, flow: Infinity }] }))).toMatchInlineSnapshot(`
    [
      "invalid at points.0.pressure: Point 1, pressure is missing or not usable: type a number.",
      "invalid at points.0.flow: Point 1, flow is missing or not usable: type a number.",
    ]
  `)
  expect(refused(fakeSheet({ baseline: { before: [Number.NaN], after: [] } }))).toMatchInlineSnapshot(`
    [
      "invalid at baseline.before.0: Baseline before, reading 1 is missing or not usable: type a number.",
    ]
  `)
})

test('flows and pressures that are no readings are refused', () => {
  expect(refused(fakeSheet({ points: [{ pressure: 0, flow: 0 }] }))).toMatchInlineSnapshot(`
    [
      "not positive at points.0.pressure: Point 1, pressure is 0: type the pressure that the flow was read at.",
      "not positive at points.0.flow: Point 1, flow is 0: type a number above zero.",
    ]
  `)
  expect(refused(fakeSheet({ points: [{ pressure: 50, flow: -300 }] }))).toMatchInlineSnapshot(`
    [
      "not positive at points.0.flow: Point 1, flow is -300: type a number above zero.",
    ]
  `)
  expect(refused(fakeSheet({ points: [{ pressure: 1050, flow: 300 }] }))).toMatchInlineSnapshot(`
    [
      "out of range at points.0.pressure: Point 1, pressure is 1050, outside -1000 to 1000: check the digits and the unit.",
    ]
  `)
  expect(refused({ ...fakeSheet(), points: [{ ...point, devicePressure: 9, range: 'wide' }] })).toMatchInlineSnapshot(`
    [
      "both at points.0: Point 1 has a flow and a device pressure: clear one of them.",
    ]
  `)
})

test('pressures of both signs in one test are refused', () => {
  expect(refused(fakeSheet({ points: [point, { pressure: 40, flow: 900 }] }))).toMatchInlineSnapshot(`
    [
      "mixed signs at points: Points have pressures with and without a minus sign: type them all one way.",
    ]
  `)
})

test('a baseline as large as the reading is refused', () => {
  expect(refused(fakeSheet({ baseline: { before: [-60], after: [] } }))).toMatchInlineSnapshot(`
    [
      "baseline too large at points.0.pressure: Point 1, pressure is no more than the baseline of -60 Pa: check the signs of both.",
    ]
  `)
  const turned = fakeSheet({
    direction: 'pressurize',
    points: [{ pressure: 3, flow: 90 }],
    baseline: { before: [3], after: [] },
  })
  expect(refused(turned)).toMatchInlineSnapshot(`
    [
      "baseline too large at points.0.pressure: Point 1, pressure is no more than the baseline of 3 Pa: check the signs of both.",
    ]
  `)
})

test('too few points, too many, all at one pressure or on no line are refused', () => {
  expect(refused(fakeRegression({ points: [point] }))).toMatchInlineSnapshot(`
    [
      "too few at points: Points are too few for a regression: type at least 5 (3 can be computed), or choose the one-point procedure.",
    ]
  `)
  expect(refused(fakeSheet({ points: Array.from({ length: 5001 }, () => point) }))).toMatchInlineSnapshot(`
    [
      "too many at points: Points number 5001: keep 5000 or fewer.",
    ]
  `)
  expect(refused(fakeRegression({ points: [point, point, point, point, point] }))).toMatchInlineSnapshot(`
    [
      "same pressure at points: Points are all at the same pressure: take them at several, about 10 to 60 Pa.",
    ]
  `)
  const wild = [50, 50.2, 50.1, 50.3].map((pressure, index) => ({
    pressure: -pressure,
    flow: 10 ** (index % 2 === 0 ? 1 : 6),
  }))
  expect(refused(fakeRegression({ points: wild }))).toMatchInlineSnapshot(`
    [
      "no line at points: The points lie near no line: check every reading, and take pressures that lie further apart.",
    ]
  `)
})

test('a range that the device lacks, or that cannot be used, is refused', () => {
  const points = [{ pressure: -50, devicePressure: 80, range: 'middle' }]
  const range = { coefficient: 10, exponent: 0.5 }
  expect(refused(fakeSheet({ points }))).toMatchInlineSnapshot(`
    [
      "unknown range at points.0.range: Point 1, range “middle” is not a range of this device: add the range to the device first.",
    ]
  `)
  expect(refused(fakeSheet({ points, device: { ranges: { wide: range } } }))).toMatchInlineSnapshot(`
    [
      "unknown range at points.0.range: Point 1, range “middle” is not a range of this device: choose one of wide.",
    ]
  `)
  const broken = { middle: { coefficient: 0, exponent: 5, minPressure: 30, maxPressure: 20 } }
  expect(refused(fakeSheet({ points, device: { ranges: broken } }))).toMatchInlineSnapshot(`
    [
      "not positive at device.ranges.middle.coefficient: Range middle, coefficient is 0: type a number above zero.",
      "out of range at device.ranges.middle.exponent: Range middle, exponent is 5, outside 0.1 to 2: type the exponent of the certificate, near 0.5.",
      "out of range at device.ranges.middle.maxPressure: Range middle, highest pressure is 20, outside 30 to 10000: it must be above the lowest.",
    ]
  `)
  const high = { ...range, minPressure: 30, maxPressure: 20_000 }
  expect(refused(fakeSheet({ points, device: { ranges: { middle: high } } }))).toMatchInlineSnapshot(`
    [
      "out of range at device.ranges.middle.maxPressure: Range middle, highest pressure is 20000, outside 30 to 10000: check the digits and the unit.",
    ]
  `)
  expect(() =>
    reduce(fakeSheet({ points, device: { ranges: { ...broken, middle: range, wide: broken.middle } } })),
  ).not.toThrow()
})

test('air that no place on earth has is refused', () => {
  expect(refused(fakeSheet({ air: { indoor: 700, outdoor: -80 } }))).toMatchInlineSnapshot(`
    [
      "out of range at air.indoor: Indoor temperature is 700, outside -76 to 140: check the digits and that it is in degF.",
      "out of range at air.outdoor: Outdoor temperature is -80, outside -76 to 140: check the digits and that it is in degF.",
    ]
  `)
  expect(refused(fakeSheet({ air: { indoor: 70, outdoor: 30, elevation: 52_800, barometer: 29.92 } })))
    .toMatchInlineSnapshot(`
    [
      "out of range at air.elevation: Elevation is 52800, outside -1640 to 29528: check the digits and the unit.",
      "out of range at air.barometer: Barometer is 29.92, outside 30000 to 110000: type the station pressure in Pa, for example 101325.",
    ]
  `)
})

test('cells beside the readings are refused outside what they can hold', () => {
  const building = { volume: 0, floorArea: -1, enclosureArea: 1e12, height: 0, bedrooms: -1, volumePercent: 80 }
  expect(refused(fakeSheet({ building }))).toMatchInlineSnapshot(`
    [
      "not positive at building.volume: Volume is 0: type a number above zero.",
      "not positive at building.floorArea: Floor area is -1: type a number above zero.",
      "out of range at building.enclosureArea: Enclosure area is 1000000000000, too large to be true: check the digits and the unit.",
      "not positive at building.height: Height is 0: type a number above zero.",
      "out of range at building.bedrooms: Bedrooms is -1, outside 0 to 1000: type how many there are.",
      "out of range at building.volumePercent: Volume uncertainty is 80, outside 0 to 50: type the uncertainty in percent.",
    ]
  `)
  const instrument = { pressurePercent: -1, pressureFloor: 0.25, flowPercent: 500 }
  expect(refused(fakeSheet({ instrument, exponent: 1.2, exponentUncertainty: 2 }))).toMatchInlineSnapshot(`
    [
      "out of range at exponent: Exponent is 1.2, outside 0.5 to 1: type 0.65 for a house, 0.6 for ducts, or what was measured.",
      "out of range at exponentUncertainty: Exponent uncertainty is 2, outside 0 to 0.25: it is usually 0.05.",
      "out of range at instrument.pressurePercent: Pressure uncertainty is -1, outside 0 to 50: type what the certificate gives.",
      "out of range at instrument.flowPercent: Flow uncertainty is 500, outside 0 to 50: type what the certificate gives.",
    ]
  `)
  expect(refused(fakeSheet({ weatherShieldingFactor: 59, duct: { leakage: 'total', airHandlerFlow: 0 } })))
    .toMatchInlineSnapshot(`
    [
      "not positive at duct.airHandlerFlow: Air-handler flow is 0: type a number above zero.",
      "out of range at weatherShieldingFactor: Weather shielding factor is 59, outside 0.01 to 2: take it from the table of ASHRAE 62.2.",
    ]
  `)
})

test('the error reads as its issues, one on a line', () => {
  const error = new SheetError([
    { path: ['points'], code: 'too few', message: 'One.' },
    { path: [], code: 'invalid', message: 'Two.' },
  ])
  expect([error.name, error.message]).toEqual(['SheetError', 'One.\nTwo.'])
})

test('a cell is named as a person calls it', () => {
  const paths = [
    [],
    ['points', 0],
    ['baseline', 'before', 1],
    ['device', 'ranges', 'step 2', 'minPressure'],
    ['building', 'floorArea'],
  ]
  expect(paths.map(cellName)).toEqual([
    'the sheet',
    'point 1',
    'baseline before, reading 2',
    'range step 2, lowest pressure',
    'floor area',
  ])
})

test('a key that is not known is refused with the nearest one that is', () => {
  const sheet = fakeSheet()
  const { points, ...rest } = sheet
  expect(refused({ ...sheet, builing: { volume: 20_000 } })).toEqual([
    'unknown key at builing: builing: did you mean building?',
  ])
  expect(refused({ ...sheet, building: { volumme: 20_000, floorarea: 1 } })).toEqual([
    'unknown key at building.volumme: building.volumme: did you mean building.volume?',
    'unknown key at building.floorarea: building.floorarea: did you mean building.floorArea?',
  ])
  expect(refused({ ...sheet, volume: 20_000 })).toEqual([
    'unknown key at volume: volume: did you mean building.volume?',
  ])
  expect(refused({ ...rest, pionts: points })).toMatchInlineSnapshot(`
    [
      "unknown key at pionts: pionts: did you mean points?",
      "invalid at points: Points is missing or not usable: give an array.",
    ]
  `)
  expect(refused({ ...sheet, points: [{ pressure: 50, flwo: 1000 }] })).toMatchInlineSnapshot(`
    [
      "unknown key at points.0.flwo: points.0.flwo: did you mean points.0.flow?",
      "invalid at points.0.flow: Point 1, flow is missing or not usable: type a number.",
    ]
  `)
  expect(refused({ ...sheet, device: { ranges: { wide: { coefficient: 1, exponent: 0.5, minPresure: 3 } } } })).toEqual(
    [
      'unknown key at device.ranges.wide.minPresure: device.ranges.wide.minPresure: did you mean device.ranges.wide.minPressure?',
    ],
  )
  expect(refused(JSON.parse(`{"__proto__": 1, "${'x'.repeat(1e5)}": 1}`))[0]?.length).toBeLessThan(200)
  expect(() => reduce({ ...sheet, builing: undefined } as Sheet)).not.toThrow()
})
