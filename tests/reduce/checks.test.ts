/** Each check in each of its outcomes. Where a limit is a standard's, the check's own file names it. */
import { expect, test } from 'vitest'
import { checks } from '../../lib/reduce/checks/index.ts'
import { reduce } from '../../lib/reduce/reduce.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'
import { said } from './said.ts'
import { fakeRegression, fakeSheet, wholeBuilding } from './sheets.ts'

const line = (pressures: number[], exponent = 0.65) =>
  pressures.map((pressure, index) => ({
    pressure: -pressure,
    flow: 80 * pressure ** exponent * (1 + 0.004 * (index % 2)),
  }))

const ofBaseline = (before: number[], after: number[], procedure: Sheet['procedure'] = 'iso-9972') =>
  said('baseline', fakeRegression({ procedure, baseline: { before, after } }))

const ofPoints = (pressures: number[], procedure: Sheet['procedure']) =>
  said('points', fakeRegression({ procedure, points: line(pressures) }))

const ofPressures = (pressures: number[], procedure: Sheet['procedure']) =>
  said('pressures', fakeRegression({ procedure, points: line(pressures) }))

const ofOnePoint = (pressure: number) => said('pressures', fakeSheet({ points: [{ pressure, flow: 900 }] }))

const ofTwoPoints = (...pressures: number[]) =>
  said('pressures', fakeSheet({ procedure: 'two-point', points: line(pressures) }))

const ofLine = (id: string, exponent: number) =>
  said(id, fakeRegression({ points: line([60, 50, 40, 30, 20], exponent) }))

const ofRange = (devicePressure: number, limits: { minPressure?: number; maxPressure?: number }) =>
  said(
    'range-window',
    fakeSheet({
      points: [{ pressure: -50, devicePressure, range: 'middle' }],
      device: { ranges: { middle: { coefficient: 100, exponent: 0.5, ...limits } } },
    }),
  )

const ofAir = (id: string, air: Sheet['air'], overrides: Partial<Sheet> = {}) =>
  said(id, fakeSheet({ ...overrides, building: { height: 30 }, ...(air && { air }) }))

test('a good regression is good throughout', () => {
  const sheet = fakeRegression({
    building: wholeBuilding,
    air: { indoor: 68, outdoor: 50 },
    baseline: { before: [-0.8, -1.2], after: [-1.1] },
    fieldCheck: { area: 100, pressure: 50, flow: 757 },
  })
  expect(reduce(sheet).checks.map(({ id, outcome }) => `${id}: ${outcome}`)).toMatchInlineSnapshot(`
    [
      "plausibility: good",
      "both-directions: not checked",
      "baseline: good",
      "points: good",
      "pressures: good",
      "steps: good",
      "half-pressure: good",
      "exponent: good",
      "correlation: good",
      "weighted-line: good",
      "outlier: good",
      "known-hole: good",
      "air: good",
      "weather: good",
      "volume-floor-area: good",
    ]
  `)
})

test('a baseline that is large or wanders is told, by what the procedure accepts', () => {
  expect(ofBaseline([], [])).toMatchInlineSnapshot(
    `"not checked: No baseline typed. Read the pressure with the device closed, before and after."`,
  )
  expect(ofBaseline([-6], [-5])).toMatchInlineSnapshot(
    `"bad: The baseline is 6 Pa; at most 5 Pa are accepted. Test again in calmer weather."`,
  )
  expect(ofBaseline([-6], [-5], 'astm-e779')).toMatch(/^doubtful/)
  expect(ofBaseline([-3, 3], [0])).toMatchInlineSnapshot(
    `"doubtful: The baseline wandered over 6 Pa: wind. Average for longer, or test again in calmer weather."`,
  )
  expect(ofBaseline([-1], [])).toMatchInlineSnapshot(
    `"doubtful: No baseline after the test. The procedure asks for one on either side."`,
  )
  expect(ofBaseline([-5], [5])).toMatch(/^doubtful/)
  expect(ofBaseline([-5], [-5])).toMatch(/^good/)
  expect(ofBaseline([-5.1], [-5])).toMatch(/^bad/)
  expect(ofBaseline([-2.5], [2.5])).toMatch(/^good/)
  expect(ofBaseline([-2.6], [2.5])).toMatch(/^doubtful/)
  expect(ofBaseline([-1], [-1.2])).toMatchInlineSnapshot(`"good: The baseline is small and steady."`)
})

test('baseline readings above and below zero are averaged apart, and one side does not cancel the other', () => {
  // Above zero (7 + 5) / 2 = 6, below -5.8: their mean is 0.067 Pa.
  expect(ofBaseline([7, 5, -5.8], [0.5])).toMatchInlineSnapshot(
    `"bad: The baseline readings above zero have a mean of 6 Pa; at most 5 Pa are accepted of either sign. Test again in calmer weather."`,
  )
  expect(ofBaseline([0.2], [1, -6, -5])).toMatchInlineSnapshot(
    `"bad: The baseline readings below zero have a mean of 5.5 Pa; at most 5 Pa are accepted of either sign. Test again in calmer weather."`,
  )
  expect(ofBaseline([7, 5, -5.8], [0.5], 'astm-e779')).toMatch(/^doubtful/)
  // Exactly 5: (4.9 + 5.1) / 2; the rounding of a mean of three decides nothing.
  expect(ofBaseline([4.9, 5.1], [5])).toMatch(/^good/)
  expect(ofBaseline([-4.9, -5, -5.1], [-5])).toMatch(/^good/)
  expect(ofBaseline([4], [-4])).toMatchInlineSnapshot(
    `"doubtful: The baseline is 4 Pa before the test and -4 Pa after it. The two do not cancel: the pressure moved by 8 Pa while the house was tested. Test again in calmer weather."`,
  )
  expect(ofBaseline([-3, -3.2], [2.8, 2.6], 'astm-e779')).toContain('moved by 5.8 Pa')
  expect(ofBaseline([0, 0], [0])).toMatch(/^good/)
})

test('too few points, and points close together, are told by what the procedure asks for', () => {
  expect(ofPoints([50, 40, 30], 'astm-e779')).toMatchInlineSnapshot(
    `"bad: 3 points; ASTM E779 asks for 5 or more. Take more."`,
  )
  expect(ofPoints([50, 40, 30, 20], 'iso-9972')).toMatchInlineSnapshot(
    `"bad: 4 points; ISO 9972 asks for 5 or more. Take more."`,
  )
  expect(ofPoints([50, 48, 46, 44, 42], 'astm-e779')).toMatchInlineSnapshot(
    `"doubtful: The pressures lie close together, so the exponent is uncertain. Spread them further."`,
  )
  expect(ofPoints([60, 50, 40, 30, 20, 10], 'astm-e779')).toMatchInlineSnapshot(
    `"good: Enough points over enough pressures."`,
  )
  expect(ofPoints([60, 10.2, 10.1, 10, 9.9, 9.8], 'astm-e779')).toMatchInlineSnapshot(
    `"doubtful: Point 1 decides the exponent alone, as the others lie close together. Take more points between."`,
  )
  expect(ofPoints([50, 45, 40, 35, 25], 'iso-9972')).toMatch(/^good/)
  expect(ofPoints([50, 45, 40, 35, 25.1], 'iso-9972')).toMatch(/^doubtful/)
})

const repeated = (procedure: Sheet['procedure'], ...readings: [pressure: number, flow: number][]) =>
  said('points', fakeSheet({ procedure, points: readings.map(([pressure, flow]) => ({ pressure, flow })) }))

test('readings repeated at one pressure must agree, and ASTM E1827 wants several at either of two', () => {
  expect(repeated('one-point', [-50, 1000])).toBeUndefined()
  expect(repeated('one-point', [-50, 1000], [-50, 1049])).toMatchInlineSnapshot(`"good: The repeated readings agree."`)
  expect(repeated('one-point', [-50, 1000], [-50, 1060])).toMatchInlineSnapshot(
    `"doubtful: The repeated readings lie 5.8 % apart. Look for a slip in one, or average each for longer."`,
  )
  expect(repeated('two-point', [-50, 1000], [-12.5, 406])).toMatchInlineSnapshot(
    `"doubtful: ASTM E1827 averages several readings at either pressure. Take more within 3 Pa of each."`,
  )
  expect(repeated('two-point', [-50, 1000], [-50, 1005], [-12.5, 406], [-12.5, 408])).toMatch(/^good/)
})

test('lowest and highest pressure are held to what the procedure asks for', () => {
  expect(ofPressures([60, 50, 40, 30, 20, 8], 'astm-e779')).toMatch(/^good/)
  expect(ofPressures([60, 50, 40, 30, 20, 7.9], 'astm-e779')).toMatchInlineSnapshot(
    `"doubtful: The lowest point is 7.9 Pa, where wind and baseline weigh most. Leave it out, or start near 10 Pa."`,
  )
  expect(ofPressures([60, 50, 40, 35, 25], 'astm-e779')).toMatch(/^good/)
  expect(ofPressures([60, 50, 40, 35, 26], 'astm-e779')).toMatchInlineSnapshot(
    `"doubtful: The points run from 26 to 60 Pa, little of 10 to 60 Pa. Take more below."`,
  )
  expect(ofPressures([40, 30, 25, 20, 15], 'astm-e779')).toMatch(/^good/)
  expect(ofPressures([39, 30, 25, 20, 15], 'astm-e779')).toMatchInlineSnapshot(
    `"doubtful: The points run from 15 to 39 Pa, little of 10 to 60 Pa. Take more above."`,
  )
  expect(ofPressures([24, 22, 20, 18, 12], 'iso-9972')).toMatchInlineSnapshot(
    `"bad: No point reaches 25 Pa. Use a larger device or more of them."`,
  )
  expect(ofPressures([25, 22, 20, 18, 12], 'iso-9972')).toMatchInlineSnapshot(
    `"doubtful: The highest point is 25 Pa; 50 Pa is asked for. Report why it was not reached."`,
  )
  expect(ofPressures([60, 50, 40, 30, 8], 'iso-9972')).toMatchInlineSnapshot(
    `"doubtful: The lowest point is 8 Pa; 10 Pa or five times the baseline is the least. Leave it out or test in calmer weather."`,
  )
  expect(ofPressures([45, 40, 30, 20, 10], 'iso-9972')).toMatchInlineSnapshot(
    `"doubtful: The highest point is 45 Pa; 50 Pa is asked for. Report why it was not reached."`,
  )
  expect(ofPressures([50, 40, 30, 20, 10], 'iso-9972')).toMatchInlineSnapshot(
    `"good: The points cover the pressures asked for."`,
  )
  // Five times a baseline of 3 Pa is 15 Pa.
  const baseline = { before: [-3], after: [-3] }
  const points = [60, 50, 40, 30]
  const from = (lowest: number) =>
    fakeRegression({ procedure: 'iso-9972', baseline, points: line([...points, lowest]) })
  expect(said('pressures', from(18))).toMatch(/^good/)
  expect(said('pressures', from(17))).toMatch(/^doubtful/)
})

test('the least pressure of ISO 9972 rests on the largest mean of the baseline of one sign', () => {
  // Before 4, after -2, their mean 1 Pa: five times 4 is 20 Pa, five times the mean would be 5.
  const baseline = { before: [4], after: [-2, -2] }
  const from = (lowest: number) =>
    fakeRegression({ procedure: 'iso-9972', baseline, points: line([60, 50, 40, 30, lowest]) })
  // Typed as -19 Pa, less a baseline of 1 Pa: 20 Pa.
  expect(said('pressures', from(19))).toMatch(/^good/)
  expect(said('pressures', from(18))).toMatchInlineSnapshot(
    `"doubtful: The lowest point is 19 Pa; five times the largest baseline mean of one sign, 20 Pa, is the least. Leave it out or test in calmer weather."`,
  )
  // Of one side both signs: above zero 3, below -1; five times 3 is 15 Pa.
  const both = { before: [3, 3, -1], after: [] }
  expect(
    said('pressures', fakeRegression({ procedure: 'iso-9972', baseline: both, points: line([60, 50, 40, 30, 12]) })),
  ).toMatch(/^doubtful.* 15 Pa, is the least/)
})

const ofSteps = (pressures: number[], procedure: Sheet['procedure'] = 'iso-9972') =>
  said('steps', fakeRegression({ procedure, points: line(pressures) }))

test('steps between points are held to 10 Pa and to one another', () => {
  expect(ofSteps([60, 50, 40, 30, 20, 10])).toMatchInlineSnapshot(
    `"good: The steps between the points are small and about even."`,
  )
  // Steps 10 10 10 20.
  expect(ofSteps([60, 50, 40, 30, 10])).toMatchInlineSnapshot(
    `"doubtful: Between the points at 10 and 30 Pa there is a step of 20 Pa; ISO 9972 asks for 10 Pa at most. Take a point between."`,
  )
  expect(ofSteps([60, 45, 30, 20, 10], 'astm-e779')).toContain('a step of 15 Pa; ASTM E779 asks')
  // A tenth more than 10 Pa is the hand that steers.
  expect(ofSteps([61, 50, 40, 30, 20])).toMatch(/^good/)
  expect(ofSteps([61.2, 50, 40, 30, 20])).toMatch(/^doubtful/)
  // Steps 10 3.5 3.5 3.5 3.5: the middle one is 3.5, 10 is 2.9 times that.
  expect(ofSteps([34, 24, 20.5, 17, 13.5, 10])).toMatchInlineSnapshot(
    `"doubtful: The steps between the points go from 3.5 to 10 Pa. Spread the points evenly from the lowest to the highest pressure."`,
  )
  // Steps 9 9 9 3: 3 is a third of 9.
  expect(ofSteps([42, 33, 24, 15, 12])).toMatch(/^doubtful.* from 3 to 9 Pa/)
  // Taken on the way down and on the way up again: four pressures, 10 Pa apart.
  expect(ofSteps([50, 40, 30, 20, 21, 29, 41, 50])).toMatch(/^good/)
  expect(said('steps', fakeSheet())).toBeUndefined()
})

test('a sheet says that ASTM E779 asks for both directions', () => {
  expect(said('both-directions', fakeRegression())).toMatchInlineSnapshot(
    `"not checked: ASTM E779 asks for both directions, or for the reason in the report. Test in the other one too, or say why not."`,
  )
  expect(said('both-directions', fakeRegression({ procedure: 'iso-9972' }))).toBeUndefined()
  expect(said('both-directions', fakeSheet())).toBeUndefined()
})

test('the pressure of one point, and of two, is held to where the procedure wants it', () => {
  expect(ofOnePoint(-55)).toMatchInlineSnapshot(`"good: The point was taken near 50 Pa."`)
  expect(ofOnePoint(-56)).toMatch(/^doubtful/)
  expect(ofOnePoint(-30)).toMatchInlineSnapshot(
    `"doubtful: The point was taken at 30 Pa, so the result at 50 Pa hangs on the assumed exponent. Get nearer to 50 Pa, or take five points or more."`,
  )
  expect(ofOnePoint(-25)).toMatch(/^doubtful/)
  expect(ofOnePoint(-24)).toMatch(/^bad/)
  expect(ofTwoPoints(50, 12.5)).toMatchInlineSnapshot(`"good: The points were taken near 50 and 12.5 Pa."`)
  expect(ofTwoPoints(50, 20)).toMatchInlineSnapshot(
    `"doubtful: The points were taken at 50 and 20 Pa. Take them near 50 and 12.5 Pa, or take five points or more."`,
  )
  expect(ofTwoPoints(50, 30)).toMatch(/^bad/)
})

const perfect = (exponent: number) =>
  [60, 50, 40, 30, 20].map((pressure) => ({ pressure: -pressure, flow: 80 * pressure ** exponent }))

const two = (exponent: number) =>
  said(
    'exponent',
    fakeSheet({
      procedure: 'two-point',
      points: [perfect(exponent)[1]!, { pressure: -12.5, flow: 80 * 12.5 ** exponent }],
    }),
  )

test('an exponent, and a flow at half the pressure, outside what leaks can have are told', () => {
  expect(ofLine('exponent', 0.65)).toMatch(/^good/)
  expect(ofLine('exponent', 0.42)).toMatchInlineSnapshot(
    `"bad: The exponent is 0.42; ASTM E779 accepts 0.5 to 1.0. Look for a hose, a range or a window that changed during the test, and repeat it."`,
  )
  expect(ofLine('exponent', 1.1)).toMatch(/^bad/)
  for (const exponent of [0.5, 1]) {
    expect(said('exponent', fakeRegression({ points: perfect(exponent) }))).toMatch(/^good/)
    expect(said('half-pressure', fakeRegression({ points: perfect(exponent) }))).toMatch(/^good/)
  }
  for (const exponent of [0.499, 1.001]) {
    expect(said('exponent', fakeRegression({ points: perfect(exponent) }))).toMatch(/^bad/)
  }
  expect(two(0.65)).toMatch(/^good/)
  expect(two(0.45)).toMatchInlineSnapshot(
    `"bad: The exponent is 0.45; ASTM E1827 accepts 0.5 to 1.0. Look for a hose, a range or a window that changed during the test, and repeat it."`,
  )
  expect(said('exponent', fakeSheet())).toMatchInlineSnapshot(
    `"not checked: One point gives no exponent: it is assumed."`,
  )
  expect(ofLine('half-pressure', 0.65)).toMatch(/^good/)
  expect(ofLine('half-pressure', 0.48)).toMatch(/^doubtful/)
  expect(ofLine('half-pressure', 0.3)).toMatchInlineSnapshot(
    `"bad: At half the pressure the flow falls to 0.812 of itself; no opening does that. Check hoses, range and readings."`,
  )
  expect(said('half-pressure', fakeSheet())).toMatchInlineSnapshot(
    `"not checked: Take a second reading at half the pressure: the flow should fall to about 0.6 of the first."`,
  )
  const half = [
    { pressure: -50, flow: 1000 },
    { pressure: -25, flow: 640 },
  ]
  expect(said('half-pressure', fakeSheet({ points: half }))).toMatchInlineSnapshot(
    `"good: At half the pressure the flow falls to 0.64 of itself."`,
  )
})

test('a weak correlation, and a point far off the line, are told', () => {
  const scatter = [0.12, -0.15, 0.1, -0.1, 0.12, -0.09]
  expect(said('correlation', fakeRegression({ procedure: 'iso-9972' }, scatter))).toMatchInlineSnapshot(
    `"bad: The points scatter: r² is 0.9159. Average each reading for longer, or test in calmer weather."`,
  )
  expect(said('correlation', fakeRegression({}, scatter))).toMatch(/^doubtful/)
  expect(said('correlation', fakeSheet())).toBeUndefined()
  // On a line as drawn, r² is 1 by its definition; said to the digits that are known.
  expect(said('correlation', fakeRegression({}, [0, 0, 0, 0, 0, 0]))).toBe(
    'good: The points lie well on a line: r² 1.0000.',
  )
  const slip = [0.002, -0.001, -0.2, 0.001, 0.002, -0.002]
  expect(said('outlier', fakeRegression({}, slip))).toMatchInlineSnapshot(
    `"doubtful: Point 3 stands 20 % below the line through the others. Look for a slip in it, or read it again."`,
  )
  expect(said('outlier', fakeRegression())).toMatch(/^good/)
  expect(said('outlier', fakeRegression({ points: line([60, 40, 20]) }))).toMatch(/^not checked/)
})

test('a device pressure outside its range is told', () => {
  expect(ofRange(80, { minPressure: 25, maxPressure: 300 })).toMatch(/^good/)
  expect(ofRange(10, { minPressure: 25 })).toMatchInlineSnapshot(
    `"bad: Point 1 reads 10 Pa at the device, below what range “middle” is calibrated for. Read it again with a smaller opening."`,
  )
  expect(ofRange(400, { minPressure: 25, maxPressure: 300 })).toMatchInlineSnapshot(
    `"bad: Point 1 reads 400 Pa at the device, above what range “middle” is calibrated for. Read it again with a larger opening."`,
  )
  expect(ofRange(25, { minPressure: 25, maxPressure: 300 })).toMatch(/^good/)
  expect(ofRange(-300, { minPressure: 25, maxPressure: 300 })).toMatch(/^good/)
  expect(ofRange(80, {})).toMatch(/^not checked/)
  expect(said('range-window', fakeSheet())).toBeUndefined()
})

test('temperatures that are missing, and weather beyond the procedure, are told', () => {
  expect(ofAir('air', undefined)).toMatchInlineSnapshot(
    `"not checked: Temperatures not given, so flows are not corrected for the density of the air. Type both to correct them."`,
  )
  expect(ofAir('air', { indoor: 70, outdoor: 10 })).toMatchInlineSnapshot(
    `"good: Corrected for air of 1.2 and 1.353 kg/m³, indoors and outdoors. Sea level is assumed: type the elevation if it is another."`,
  )
  expect(ofAir('air', { indoor: 70, outdoor: 10 }, { subject: 'ducts' })).toMatchInlineSnapshot(
    `"doubtful: For ducts, indoor is the air inside the ducts and outdoor the air around the device. These two differ much: check both."`,
  )
  expect(ofAir('weather', undefined)).toMatch(/^not checked/)
  expect(ofAir('weather', { indoor: 70, outdoor: 60 })).toMatch(/^good/)
  // 30 ft are 9.144 m: 200 m K are 21.87 K or 39.37 degF, 250 are 27.34 K or 49.21 degF.
  expect(ofAir('weather', { indoor: 70, outdoor: 30.7 })).toMatch(/^good/)
  expect(ofAir('weather', { indoor: 70, outdoor: 30.6 })).toMatch(/^doubtful/)
  const iso = { procedure: 'iso-9972', points: line([60, 50, 40, 30, 20]) } as const
  expect(ofAir('weather', { indoor: 70, outdoor: 20.8 }, iso)).toMatch(/^good/)
  expect(ofAir('weather', { indoor: 70, outdoor: 20.7 }, iso)).toMatch(/^doubtful/)
  expect(ofAir('weather', { indoor: 70, outdoor: 20 })).toMatchInlineSnapshot(
    `"doubtful: Temperature difference times height is 254 m K, over 200: stack effect disturbs the test. Test in milder weather, or in both directions."`,
  )
  expect(ofAir('weather', { indoor: 70, outdoor: 20 }, { subject: 'ducts' })).toBeUndefined()
})

test('every text of every check is one or more whole sentences', () => {
  const sheets = [
    fakeSheet(),
    fakeRegression(),
    fakeRegression({ procedure: 'iso-9972' }),
    fakeSheet({ subject: 'ducts' }),
  ]
  for (const { text } of sheets.flatMap((sheet) => reduce(sheet).checks)) expect(text).toMatch(/^[A-Z0-9].*[.?]$/)
  expect(new Set(checks.map(({ id }) => id)).size).toBe(checks.length)
})
