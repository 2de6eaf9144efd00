/** Refuses a sheet that cannot be computed, naming the cell and the remedy. */
import type { Sheet } from '../sheet/schema.ts'
import { convert } from '../units/convert.ts'
import { baselineOf, corrected } from './baseline.ts'
import { SheetError, type SheetIssue, type IssueCode, cellName, sentence } from './errors.ts'
import { say } from '../words/say.ts'

type Path = (string | number)[]

/** More rows than any test has; a pasted file that is longer is a mistake. */
const maxPoints = 5000

/** Collects issues of cells. */
class Findings {
  issues: SheetIssue[] = []

  add(path: Path, code: IssueCode, rest: string): void {
    this.issues.push({ path, code, message: `${sentence(cellName(path))} ${rest}` })
  }

  positive(path: Path, value: number | undefined, most = 1e9): void {
    if (value === undefined) return
    if (value <= 0) this.add(path, 'not positive', say`is ${value}: type a number above zero.`)
    else if (value < 1e-9 || value > most) {
      const rest =
        value > most
          ? say`is ${value}, too large to be true: check the digits and the unit.`
          : say`is ${value}, too small to be true: check the digits and the unit.`
      this.add(path, 'out of range', rest)
    }
  }

  within(
    path: Path,
    value: number | undefined,
    low: number,
    high: number,
    remedy = say`check the digits and the unit`,
  ): void {
    if (value === undefined || (value >= low && value <= high)) return
    this.add(path, 'out of range', say`is ${value}, outside ${low} to ${high}: ${remedy}.`)
  }
}

function checkAir(found: Findings, { air, units, device }: Sheet): void {
  found.within(
    ['device', 'calibrationDensity'],
    device?.calibrationDensity,
    0.5,
    2,
    say`type it in kg/m³, for example 1.2041`,
  )
  if (!air) return
  const [low, high] = [-60, 60].map((limit) => Math.round(convert(limit, 'degC', units.temperature)))
  for (const side of ['indoor', 'outdoor'] as const) {
    found.within(['air', side], air[side], low!, high!, say`check the digits and that it is in ${units.temperature}`)
  }
  const [bottom, top] = [-500, 9000].map((limit) => Math.round(convert(limit, 'm', units.length)))
  found.within(['air', 'elevation'], air.elevation, bottom!, top!)
  found.within(
    ['air', 'barometer'],
    air.barometer,
    30_000,
    110_000,
    say`type the station pressure in Pa, for example 101325`,
  )
}

/** Only the ranges in use: a slip in another one of the device is no reason to refuse this sheet. */
function checkDevice(found: Findings, { device, points }: Sheet): void {
  const used = new Set(points.map((point) => ('range' in point ? point.range : undefined)))
  for (const [name, range] of Object.entries(device?.ranges ?? {})) {
    if (!used.has(name)) continue
    const path = ['device', 'ranges', name]
    found.positive([...path, 'coefficient'], range.coefficient, 1e6)
    found.within([...path, 'exponent'], range.exponent, 0.1, 2, say`type the exponent of the certificate, near 0.5`)
    found.within([...path, 'minPressure'], range.minPressure, 0, 1e4)
    const { minPressure = 0, maxPressure } = range
    // A lowest pressure that is told already says nothing about the highest.
    const from = minPressure > 1e4 ? 0 : minPressure
    const crossed = maxPressure !== undefined && maxPressure < from
    const remedy = crossed ? say`it must be above the lowest` : undefined
    found.within([...path, 'maxPressure'], maxPressure, from, 1e4, remedy)
  }
}

function checkExtras(found: Findings, sheet: Sheet): void {
  const { building, instrument, duct, fieldCheck } = sheet
  if (sheet.procedure === 'one-point') {
    found.within(['exponent'], sheet.exponent, 0.5, 1, say`type 0.65 for a house, 0.6 for ducts, or what was measured`)
    found.within(['exponentUncertainty'], sheet.exponentUncertainty, 0, 0.25, say`it is usually 0.05`)
  }
  for (const key of ['pressurePercent', 'pressureFloor', 'flowPercent'] as const) {
    found.within(['instrument', key], instrument?.[key], 0, 50, say`type what the certificate gives`)
  }
  for (const key of ['volume', 'floorArea', 'enclosureArea', 'enclosureAreaWithoutFloor'] as const) {
    found.positive(['building', key], building?.[key])
  }
  found.positive(['building', 'height'], building?.height, 5000)
  found.within(['building', 'bedrooms'], building?.bedrooms, 0, 1000, say`type how many there are`)
  found.positive(['building', 'stories'], building?.stories, 200)
  found.within(['building', 'volumePercent'], building?.volumePercent, 0, 50, say`type the uncertainty in percent`)
  found.positive(['duct', 'airHandlerFlow'], duct?.airHandlerFlow)
  found.positive(['fieldCheck', 'area'], fieldCheck?.area, 1e5)
  found.positive(['fieldCheck', 'pressure'], fieldCheck && Math.abs(fieldCheck.pressure), 1000)
  found.positive(['fieldCheck', 'flow'], fieldCheck?.flow)
  found.within(['fieldCheck', 'discharge'], fieldCheck?.discharge, 0.3, 1, say`it is 0.60 to 0.611 for a sharp edge`)
  found.positive(['averaging', 'baseline'], sheet.averaging?.baseline, 7200)
  found.positive(['averaging', 'reading'], sheet.averaging?.reading, 7200)
  found.within(['pressureScatter'], sheet.pressureScatter, 0, 50, say`type the standard deviation of one reading in Pa`)
  found.within(
    ['weatherShieldingFactor'],
    sheet.weatherShieldingFactor,
    0.01,
    2,
    say`take it from the table of ASHRAE 62.2`,
  )
}

function checkPoints(found: Findings, sheet: Sheet): void {
  const ranges = sheet.device?.ranges ?? {}
  const mean = baselineOf(sheet.baseline).mean
  for (const [side, readings] of Object.entries(sheet.baseline)) {
    readings.forEach((reading, index) => found.within(['baseline', side, index], reading, -1000, 1000))
  }
  const signs = new Set(sheet.points.map(({ pressure }) => Math.sign(pressure)).filter((sign) => sign !== 0))
  if (signs.size > 1) {
    found.add(['points'], 'mixed signs', say`have pressures with and without a minus sign: type them all one way.`)
  }
  sheet.points.forEach((point, index) => {
    const path = ['points', index]
    const { pressure } = point
    found.within([...path, 'pressure'], pressure, -1000, 1000)
    const left = corrected(pressure, mean, sheet.direction)
    if (pressure === 0)
      found.add([...path, 'pressure'], 'not positive', say`is 0: type the pressure that the flow was read at.`)
    else if (left < 0.01) {
      const rest = say`is no more than the baseline of ${Number(mean.toPrecision(4))} Pa: check the signs of both.`
      found.add([...path, 'pressure'], 'baseline too large', rest)
    }
    if ('flow' in point) {
      const { flow, fans } = point
      found.positive([...path, 'flow'], flow)
      const sum = fans?.reduce((all, fan) => all + fan.flow, 0)
      if (sum !== undefined && Math.abs(sum - flow) > 1e-6 * Math.abs(flow))
        found.add([...path, 'flow'], 'out of range', say`is ${flow}, where the fans sum to ${sum}: make them agree.`)
      fans?.forEach((fan, at) => {
        found.positive([...path, 'fans', at, 'flow'], fan.flow)
        found.within([...path, 'fans', at, 'percent'], fan.percent, 0, 50)
      })
      return
    }
    const device = Math.abs(point.devicePressure)
    if (device < 0.001)
      found.add([...path, 'devicePressure'], 'not positive', say`is ${point.devicePressure}: type the reading.`)
    found.within([...path, 'devicePressure'], point.devicePressure, -1e4, 1e4)
    if (!Object.hasOwn(ranges, point.range)) {
      const known = Object.keys(ranges).join(', ')
      const choice = known ? say`choose one of ${known}` : say`add the range to the device first`
      found.add([...path, 'range'], 'unknown range', say`“${point.range}” is not a range of this device: ${choice}.`)
    }
  })
}

function checkCount(found: Findings, { points, procedure, baseline }: Sheet): void {
  const least = { 'one-point': 1, 'two-point': 2, 'astm-e779': 3, 'iso-9972': 3, 'astm-e3158': 3 }[procedure]
  for (const [path, count] of [
    [['points'], points.length],
    [['baseline', 'before'], baseline.before.length],
    [['baseline', 'after'], baseline.after.length],
  ] as [Path, number][]) {
    if (count > maxPoints) found.add(path, 'too many', say`number ${count}: keep ${maxPoints} or fewer.`)
  }
  if (points.length >= least) return
  const rest =
    least === 1
      ? say`are empty: type a pressure and its flow.`
      : least === 2
        ? say`are too few for two pressures: type one near the pressure of the result and one near a quarter of it, or choose the one-point procedure.`
        : say`are too few for a regression: type at least 5 (3 can be computed), or choose the one-point procedure.`
  found.add(['points'], 'too few', rest)
}

function checkSpread(found: Findings, { points, procedure }: Sheet): void {
  if (procedure === 'one-point' || procedure === 'two-point') return
  const sizes = points.map(({ pressure }) => Math.abs(pressure))
  const low = sizes.reduce((a, b) => Math.min(a, b), Infinity)
  const high = sizes.reduce((a, b) => Math.max(a, b), 0)
  if (high > low * 1.001) return
  found.add(['points'], 'same pressure', say`are all at the same pressure: take them at several, about 10 to 60 Pa.`)
}

/**
 * Refuses a sheet that cannot be computed. Its form is right already: see `parseSheet`.
 *
 * @throws SheetError with one issue for each cell that stands in the way
 */
export function validate(sheet: Sheet): void {
  const found = new Findings()
  checkCount(found, sheet)
  if (found.issues.length === 0) {
    checkPoints(found, sheet)
    checkSpread(found, sheet)
  }
  checkAir(found, sheet)
  checkDevice(found, sheet)
  checkExtras(found, sheet)
  if (found.issues.length > 0) throw new SheetError(found.issues)
}
