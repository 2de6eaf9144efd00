/** Several fans that run together: each flow at its own device, range, calibration and air, then summed. */
import { densityAt, referenceDensity } from '../reduce/air.ts'
import { named, short } from '../reduce/say.ts'
import { airInEffect } from '../reduce/threshold.ts'
import type { Fan, Range, Sheet } from '../sheet/schema.ts'
import { convert } from '../units/convert.ts'
import { marksIn } from '../units/comma.ts'
import { cellValue } from './cells.ts'
import { emptyFanReading } from './empty.ts'
import { reasonOf } from './left-out.ts'
import { quote } from './read-cell.ts'
import { readRanges } from './ranges.ts'
import { isEmpty, type Points, type Reader, rowValue } from './read.ts'
import type { Device, Test, TypedFan, TypedFanReading } from './schema.ts'
import { say } from '../words/say.ts'

/** A fan of a test with what its flows are worked out by. */
export interface KnownFan {
  name: string
  typed: TypedFan
  device: Device | undefined
  /** Those in use, coefficients in the flow unit of the test. */
  ranges: Record<string, Range>
  /** Indicated or actual flow to the same as if it had been read at the density of the test's device: see {@link fanFactor}. */
  factor: number
  percent: number | undefined
}

export const fanName = ({ name }: Pick<TypedFan, 'name'>, at: number): string => name.trim() || say`fan ${at + 1}`

/**
 * What the flow of a fan is multiplied by, so that all flows of a point can be summed and then be corrected as one: an
 * orifice passes the mass `q × √(ρcal × ρ)` at an indicated flow q, and `q × ρ` at an actual one; so `√(ρcal/ρ0 × ρ/ρt)` and
 * `ρ/ρt`, ρ0 the reference density and ρt that of the air in the devices of the test. Source: physics of an orifice and
 * conservation of mass, as of one device.
 *
 * @param celsius of the air that passes the fan, and of that which passes the devices of the test
 * @example fanFactor('indicated', 1.2041, 20, 20) // 1
 */
export function fanFactor(basis: Sheet['flowBasis'], calibration: number, own: number, test: number): number {
  const ratio = densityAt(own, 0) / densityAt(test, 0)
  return basis === 'indicated' ? Math.sqrt((calibration / referenceDensity) * ratio) : ratio
}

/** The fans of a test; what is wrong with one is told by `reader`. */
export function fansOf(reader: Reader, test: Test, devices: readonly Device[], air: Sheet['air']): KnownFan[] {
  const { sheet, units } = test
  const inEffect = airInEffect({ air, units, corrections: sheet.corrections })
  return (sheet.fans ?? []).map((typed, at) => {
    const path = `fans.${at}`
    const device = devices.find(({ id }) => id === typed.device)
    const byDevice = typed.reading === 'device'
    if (byDevice && !device) {
      const remedy = say`Choose the device whose ranges reduce the device pressures, or set the readings to flow.`
      if (typed.device === '') reader.missing(`${path}.device`, say`nothing chosen. ${remedy}`)
      else reader.bad(`${path}.device`, 'unknown-device', say`it is not among your devices any more. ${remedy}`)
    }
    const used = new Set(sheet.points.map(({ fans }) => fans?.[at]?.range.trim() ?? ''))
    const { ranges, problems } = readRanges(byDevice ? device : undefined, units, used)
    // A range stands with its device; the fan is where a test shows it.
    reader.problems.push(...problems.map((problem) => Object.assign(problem, { path: `${path}.device` })))
    const calibration = device
      ? cellValue(device.calibrationDensity, 'device.calibrationDensity', 'kg/m3', { marks: marksIn(device) })
      : {}
    if (calibration.problem) reader.problems.push({ ...calibration.problem, path: `${path}.device` })
    const own = reader.value(typed.temperature, `${path}.temperature`, units.temperature)
    const inDevice = inEffect && (sheet.direction === 'depressurize' ? inEffect.indoor : inEffect.outdoor)
    const celsius = (value: number) => convert(value, units.temperature, 'degC')
    return {
      name: fanName(typed, at),
      typed,
      device,
      ranges,
      factor:
        inDevice === undefined
          ? 1
          : fanFactor(
              sheet.flowBasis,
              calibration.value ?? referenceDensity,
              celsius(own ?? inDevice),
              celsius(inDevice),
            ),
      percent: reader.value(typed.flowPercent, `${path}.flowPercent`, '%'),
    }
  })
}

/** The points of a test of several fans. A row in which any reading is bad is left out and named; a fan without one was off. */
export function readFans(reader: Reader, test: Test, devices: readonly Device[], air: Sheet['air']): Points {
  const found: Points = { points: [], rows: [], apart: [], ranges: {} }
  const fans = fansOf(reader, test, devices, air)
  for (const [row, point] of test.sheet.points.entries()) {
    if (isEmpty(point)) continue
    const left = reasonOf(point) !== ''
    const ask = left ? reader.apart() : reader
    const pressure = rowValue(ask, point.pressure, `points.${row}.pressure`, 'Pa', say`pressure`)
    const before = ask.problems.length
    const parts = fans.flatMap(
      (fan, at) => partOf(ask, fan, point.fans?.[at] ?? emptyFanReading(), `points.${row}.fans.${at}`, test) ?? [],
    )
    if (ask.problems.length > before) continue
    if (parts.length === 0) {
      ask.missing(`points.${row}`, say`no fan has a reading, so the row is left out. Type one, or empty the row.`)
      continue
    }
    if (pressure === undefined) continue
    const flow = parts.reduce((sum, part) => sum + part.flow, 0)
    const read = { pressure, flow, fans: parts }
    if (left) found.apart.push({ row, point: read })
    else {
      found.points.push(read)
      found.rows.push(row)
    }
  }
  return found
}

/** What a fan brought to a point; nothing when it was off, or when its reading cannot be used, which is told. */
function partOf(reader: Reader, fan: KnownFan, typed: TypedFanReading, path: string, { units }: Test): Fan | undefined {
  const { name, device, ranges, factor, percent } = fan
  const sure = percent === undefined ? {} : { percent }
  const by = factor === 1 ? '' : ` × ${short(factor)}`
  if (fan.typed.reading === 'flow') {
    const value = reader.value(typed.flow, `${path}.flow`, units.flow)
    if (value === undefined) return undefined
    return { name, flow: value * factor, ...sure, ...(by && { values: `${short(value)}${by}` }) }
  }
  const pressure = reader.value(typed.devicePressure, `${path}.devicePressure`, 'Pa')
  if (pressure === undefined || device === undefined) return undefined
  const range = typed.range.trim()
  if (range === '') {
    reader.missing(`${path}.range`, say`nothing chosen, so the row is left out. Choose the range that was in use.`)
    return undefined
  }
  if (!Object.hasOwn(ranges, range)) {
    const names = device.ranges.map((one) => one.name.trim()).filter(Boolean)
    const choice =
      names.length === 0 ? say`Type its ranges under devices.` : say`Choose ${names.map(quote).join(', ')}.`
    reader.bad(`${path}.range`, 'unknown-range', say`${quote(range)} is not a range of ${quote(name)}. ${choice}`)
    return undefined
  }
  const { coefficient, exponent } = ranges[range]!
  return {
    name: `${name}, ${range}`,
    flow: coefficient * Math.abs(pressure) ** exponent * factor,
    ...sure,
    values: `${named(['K', coefficient], ['Pdev', Math.abs(pressure), 'Pa'], ['m', exponent])}${by}`,
  }
}
