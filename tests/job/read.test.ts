import { describe, expect, test } from 'vitest'
import { readTest } from '../../lib/job/read.ts'
import type { TypedSheet } from '../../lib/job/schema.ts'
import { effort, fakeDevices, fakeJob, fakeTest, points } from './fake.ts'

const read = (sheet: Partial<TypedSheet> = {}, building = {}, devices = fakeDevices()) =>
  readTest(fakeJob(building), fakeTest(sheet), devices)

const said = (sheet: Partial<TypedSheet> = {}, building = {}, devices = fakeDevices()) =>
  read(sheet, building, devices).problems.map(({ path, severity, message }) => `${path} [${severity}] ${message}`)

describe('reading a test', () => {
  test('a complete test becomes a sheet', () => {
    expect(read()).toMatchInlineSnapshot(`
      {
        "apart": [],
        "problems": [],
        "rows": [
          0,
          1,
          2,
        ],
        "sheet": {
          "air": {
            "elevation": 620,
            "indoor": 68,
            "outdoor": 41,
          },
          "baseline": {
            "after": [
              -0.8,
            ],
            "before": [
              -1.2,
            ],
          },
          "building": {
            "bedrooms": 3,
            "enclosureArea": 4420,
            "floorArea": 1860,
            "height": 17,
            "stories": 2,
            "volume": 15810,
            "volumePercent": 3,
          },
          "device": {
            "calibrationDensity": 1.2041,
            "ranges": {},
          },
          "direction": "depressurize",
          "flowBasis": "indicated",
          "points": [
            {
              "flow": 790,
              "pressure": -51.3,
            },
            {
              "flow": 658,
              "pressure": -38.7,
            },
            {
              "flow": 502,
              "pressure": -26.2,
            },
          ],
          "pressureScatter": 0.2,
          "procedure": "one-point",
          "subject": "enclosure",
          "units": {
            "flow": "cfm",
            "length": "ft",
            "temperature": "degF",
          },
        },
      }
    `)
  })

  test('entirely empty rows are ignored, also when the range was carried on', () => {
    const { sheet, rows, problems } = read({ points: points(['', '', '', 'middle'], ['-51.3', '790'], ['', '']) })
    expect(problems).toEqual([])
    expect(sheet?.points).toEqual([{ pressure: -51.3, flow: 790 }])
    expect(rows).toEqual([1])
  })

  test('half a row is missing something; the complete rows stay', () => {
    const half = { points: points(['-51.3', '790'], ['-38.7', ''], ['', '502']) }
    expect(read(half).sheet?.points).toEqual([{ pressure: -51.3, flow: 790 }])
    expect(said(half)).toMatchInlineSnapshot(`
      [
        "points.1.flow [missing] Point 2, flow: nothing typed, so the row is left out. Type the flow, or empty the row.",
        "points.2.pressure [missing] Point 3, pressure: nothing typed, so the row is left out. Type the pressure, or empty the row.",
      ]
    `)
  })

  test('bad cells of rows are named, and only their rows left out', () => {
    const bad = {
      points: points(
        ['abc', '790'],
        ['-38.7', '0'],
        ['-26.2', '-502'],
        ['0', '300'],
        ['-50', '790 apples'],
        ['-50 ft', '790'],
        ['-51.3', '790'],
      ),
    }
    expect(read(bad).sheet?.points).toEqual([{ pressure: -51.3, flow: 790 }])
    expect(said(bad)).toMatchInlineSnapshot(`
      [
        "points.0.pressure [bad] Point 1, pressure: “abc” is not a number. Type digits, for example 433 or 1,020.5, or empty the row; until then it is left out.",
        "points.1.flow [bad] Point 2, flow: 0 is not a flow that was measured. Type a number above 0, or empty the row; until then it is left out.",
        "points.2.flow [bad] Point 3, flow: -502 is not a flow that was measured. Type a number above 0, or empty the row; until then it is left out.",
        "points.3.pressure [bad] Point 4, pressure: 0 is not a test pressure. Type what was read, other than 0, or empty the row; until then it is left out.",
        "points.4.flow [bad] Point 5, flow: “apples” is not a unit known here. Type the number in cfm, or empty the row; until then it is left out.",
        "points.5.pressure [bad] Point 6, pressure: “ft” is not a unit for this cell. Type the number in Pa, or empty the row; until then it is left out.",
      ]
    `)
  })

  test('bad cells outside the rows are left out alone', () => {
    const sheet = { indoor: '680', outdoor: 'cold', exponent: '3', flowPercent: '-1', barometer: '29.9' }
    const building = { volume: '0', floorArea: 'abc', enclosureArea: '-4', bedrooms: '2.5', height: '17' }
    const result = read(sheet, building)
    expect(result.sheet?.building).toEqual({ height: 17, bedrooms: undefined, stories: 2, volumePercent: 3 })
    expect(result.sheet?.air).toBeUndefined()
    expect(result.sheet?.exponent).toBeUndefined()
    expect(result.sheet?.instrument).toBeUndefined()
    expect(said(sheet, building)).toMatchInlineSnapshot(`
      [
        "indoor [bad] Indoor temperature: 680 is not the temperature of air. Type a number from -76 °F to 140 °F, or empty the cell.",
        "outdoor [bad] Outdoor temperature: “cold” is not a number. Type digits, for example 433 or 1,020.5, or empty the cell.",
        "barometer [bad] Barometer: 29.9 is not a barometer reading. Type a number from 30,000 Pa to 110,000 Pa, or empty the cell.",
        "exponent [bad] Exponent n: 3 is not an exponent of leakage. Type a number from 0.5 to 1, or empty the cell.",
        "flowPercent [bad] Flow uncertainty: -1 is not an uncertainty in percent. Type a number from 0 % to 50 %, or empty the cell.",
        "building.volume [bad] Volume: 0 is not the volume of a house. Type a number above 0, or empty the cell.",
        "building.floorArea [bad] Floor area: “abc” is not a number. Type digits, for example 433 or 1,020.5, or empty the cell.",
        "building.enclosureArea [bad] Enclosure area: -4 is not the area of an enclosure. Type a number above 0, or empty the cell.",
        "building.bedrooms [bad] Bedrooms: 2.5 is not a number of bedrooms. Type a whole number from 0 to 1,000, or empty the cell.",
      ]
    `)
  })

  test('one temperature alone corrects nothing, and says so', () => {
    expect(read({ outdoor: '' }).sheet?.air).toBeUndefined()
    expect(said({ outdoor: '' })).toMatchInlineSnapshot(`
      [
        "outdoor [missing] Outdoor temperature: nothing typed, so the density of the air is left uncorrected. Type it, or empty the indoor temperature.",
      ]
    `)
    expect(said({ indoor: '' })).toMatchInlineSnapshot(`
      [
        "indoor [missing] Indoor temperature: nothing typed, so the density of the air is left uncorrected. Type it, or empty the outdoor temperature.",
      ]
    `)
  })

  test('a baseline cell takes several readings', () => {
    const ways = ['-1.2 -0.8', '-1.2; -0.8', '-1.2, -0.8', '-1.2,-0.8', '−1,2 −0,8', '- 1.2 - 0.8', '-1.2 Pa -0.8Pa']
    const found = ways.map((baselineBefore) => read({ baselineBefore }).sheet?.baseline.before)
    expect(found).toEqual(ways.map(() => [-1.2, -0.8]))
  })

  test('a bad reading of a baseline is named and the others count', () => {
    const text = { baselineBefore: '-1.2 x -0.8 5000' }
    expect(read(text).sheet?.baseline.before).toEqual([-1.2, -0.8])
    expect(said(text)).toMatchInlineSnapshot(`
      [
        "baselineBefore [bad] Baseline before: “x” is not a number. Type digits, for example 433 or 1,020.5, or take it out.",
        "baselineBefore [bad] Baseline before: 5000 is not a baseline pressure. Type a number from -1,000 Pa to 1,000 Pa, or take it out.",
      ]
    `)
  })

  test('a unit written behind a number counts, whatever the cell is in', () => {
    const { sheet } = read(
      { points: points(['-51.3 Pa', '790 cfm'], ['-51.3Pa', '1342.22 m³/h']), indoor: '20 °C', outdoor: '41F' },
      { volume: '447.69 m3', height: '17 ft' },
    )
    const flows = sheet?.points.map((point) => ('flow' in point ? point.flow : 0))
    expect(flows?.[0]).toBe(790)
    // NIST SP 811: 1 ft = 0.3048 m exactly.
    expect(flows?.[1]).toBeCloseTo(790, 2)
    expect(sheet?.air?.indoor).toBeCloseTo(68, 9)
    expect(sheet?.air?.outdoor).toBe(41)
    expect(sheet?.building?.volume).toBeCloseTo(15_810, 0)
  })

  test('the building is typed in the units of the job and read in those of the test', () => {
    const units = { flow: 'm3/h', temperature: 'degC', length: 'm' } as const
    const { sheet } = readTest(fakeJob(), fakeTest({ indoor: '20', outdoor: '5' }, { units }), fakeDevices())
    expect(sheet?.building?.volume).toBeCloseTo(447.689, 3)
    expect(sheet?.building?.height).toBeCloseTo(5.1816, 9)
    expect(sheet?.air?.elevation).toBeCloseTo(188.976, 9)
    expect(sheet?.building?.bedrooms).toBe(3)
  })

  test('a cell of enormous text is answered at once', () => {
    const text = '1'.repeat(10_000_000)
    const sheet = { points: points([text, '790'], ['-51.3', '790']), baselineBefore: text, indoor: text }
    const { result, milliseconds } = effort(() => said(sheet, { volume: text }))
    expect(result).toMatchInlineSnapshot(`
      [
        "points.0.pressure [bad] Point 1, pressure: 10,000,000 characters are too long for a number. Type one number, or empty the row; until then it is left out.",
        "baselineBefore [bad] Baseline before: 10,000,000 characters are too long for a baseline. Type a few readings, or empty the cell.",
        "indoor [bad] Indoor temperature: 10,000,000 characters are too long for a number. Type one number, or empty the cell.",
        "building.volume [bad] Volume: 10,000,000 characters are too long for a number. Type one number, or empty the cell.",
      ]
    `)
    expect(milliseconds).toBeLessThan(500)
  })
})

describe('device readings', () => {
  const device = {
    reading: 'device' as const,
    points: points(['-50', '', '120', 'middle'], ['-40', '', '-90', 'middle']),
  }

  test('a device pressure is reduced through its range; its sign does not matter', () => {
    const { sheet, problems } = read(device)
    expect(problems).toEqual([])
    expect(sheet?.points[1]).toEqual({ pressure: -40, devicePressure: -90, range: 'middle' })
    expect(sheet?.device).toEqual({
      ranges: { middle: { coefficient: 85, exponent: 0.5, minPressure: 10, maxPressure: 400 } },
      calibrationDensity: 1.2041,
    })
  })

  test('the coefficient is brought to the flow unit of the test', () => {
    const { sheet } = read(device, {}, fakeDevices({ flowUnit: 'L/s' }))
    expect(sheet?.device?.ranges['middle']?.coefficient).toBeCloseTo(85 * 2.118880003, 4)
  })

  test('what is missing or wrong about device and range', () => {
    expect(said({ ...device, device: '' })).toMatchInlineSnapshot(`
      [
        "device [missing] Device: nothing chosen. Choose the device whose ranges reduce the device pressures, or set the readings to flow.",
      ]
    `)
    expect(said({ ...device, device: 'gone' })).toMatchInlineSnapshot(`
      [
        "device [bad] Device: it is not among your devices any more. Choose the device whose ranges reduce the device pressures, or set the readings to flow.",
      ]
    `)
    expect(said({ ...device, points: points(['-50', '790']) })).toMatchInlineSnapshot(`
      [
        "points.0.devicePressure [missing] Point 1, device pressure: nothing typed, so the row is left out. Type the device pressure, or empty the row.",
        "points.0.range [missing] Point 1, range: nothing chosen, so the row is left out. Choose the range that was in use.",
      ]
    `)
    expect(said({ ...device, points: points(['-50', '', '120', ''], ['-50', '', '120', 'Z']) })).toMatchInlineSnapshot(`
      [
        "points.0.range [missing] Point 1, range: nothing chosen, so the row is left out. Choose the range that was in use.",
        "points.1.range [bad] Point 2, range: “Z” is not a range of “Fan 2”. Choose “wide”, “middle”, “narrow”.",
      ]
    `)
  })

  test('a range without its constants leaves out the points that need it', () => {
    const ranges = [
      { name: 'wide', coefficient: '230', exponent: '0.5', minPressure: '', maxPressure: '' },
      { name: 'middle', coefficient: '', exponent: 'half', minPressure: '300', maxPressure: '25' },
    ]
    const sheet = { ...device, points: points(['-50', '', '120', 'middle'], ['-40', '', '90', 'wide']) }
    expect(read(sheet, {}, fakeDevices({ ranges })).rows).toEqual([1])
    expect(said(sheet, {}, fakeDevices({ ranges }))).toMatchInlineSnapshot(`
      [
        "device.ranges.1.coefficient [missing] Range “middle”, coefficient: nothing typed. Type it under devices, from the certificate; until then the points read with range “middle” are left out.",
        "device.ranges.1.exponent [bad] Range “middle”, exponent: “half” is not a number. Type digits, for example 433 or 1,020.5, from the certificate; until then the points read with range “middle” are left out.",
      ]
    `)
  })

  test('two ranges of one name leave out the points that need either, and others stay', () => {
    const constants = { exponent: '0.5', minPressure: '', maxPressure: '' }
    const ranges = [
      { name: 'wide', coefficient: '230', ...constants },
      { name: 'middle', coefficient: '85', ...constants },
      { name: 'middle ', coefficient: '68', ...constants },
    ]
    const sheet = { ...device, points: points(['-50', '', '120', 'middle'], ['-40', '', '90', 'wide']) }
    expect(read(sheet, {}, fakeDevices({ ranges })).rows).toEqual([1])
    expect(said(sheet, {}, fakeDevices({ ranges }))).toMatchInlineSnapshot(`
      [
        "device.ranges.2.name [bad] Range “middle”: another range of this device has this name too. Give each a name of its own; until then the points read with range “middle” are left out.",
      ]
    `)
  })

  test('a span above what any device shows names its own cell', () => {
    const ranges = [{ name: 'middle', coefficient: '85', exponent: '0.5', minPressure: '25', maxPressure: '20000' }]
    expect(said(device, {}, fakeDevices({ ranges }))).toMatchInlineSnapshot(`
      [
        "device.ranges.0.maxPressure [bad] Range “middle”, highest pressure: 20000 is not a device pressure. Type a number up to 10,000 Pa, or empty the cell.",
      ]
    `)
  })

  test('a span typed the wrong way round is left out, the range stays', () => {
    const ranges = [{ name: 'middle', coefficient: '85', exponent: '0.5', minPressure: '300', maxPressure: '25' }]
    expect(read(device, {}, fakeDevices({ ranges })).sheet?.device?.ranges).toEqual({
      middle: { coefficient: 85, exponent: 0.5 },
    })
    expect(said(device, {}, fakeDevices({ ranges }))).toMatchInlineSnapshot(`
      [
        "device.ranges.0.maxPressure [bad] Range “middle”, highest pressure: it is below the lowest pressure. Type both from the certificate, or empty the cells.",
      ]
    `)
  })

  test('a row that holds the other kind of reading says so', () => {
    expect(said({ points: points(['-50', '', '120', 'middle']) })).toMatchInlineSnapshot(`
      [
        "points.0.flow [missing] Point 1, flow: nothing typed, so the row is left out. Type the flow, or set the readings to device pressure, which this row holds.",
      ]
    `)
  })
})
