/** A sharp-edged hole of known size as a device: what must flow through it, for a check in the field. */
import { convert } from '../units/convert.ts'
import { referenceDensity } from './air.ts'
import type { CheckResult, Step } from './report.ts'
import { named, short } from './say.ts'
import { say } from '../words/say.ts'

/** Usual for a sharp-edged hole in a thin plate; hand figures lie between 0.60 and 0.611 (common practice, no source). */
const usualDischarge = 0.611

/** Measured and computed flow further apart than this are asked about, and than twice this are bad: common practice, no source. */
const agrees = 0.1
const bad = 2 * agrees

/** What is left of rounding in a quotient that stands on an edge. */
const slack = 1e-12

const beyond = (off: number, edge: number): boolean => Math.abs(off) > edge + slack

/**
 * A difference in percent at two digits, or at as many more as it takes to read on the side of the edges that it is on:
 * `10.02 %` is more than 10 %.
 */
function percentOf(off: number): string {
  let text = ''
  for (let digits = 2; digits <= 15; digits++) {
    text = short(100 * Math.abs(off), digits)
    if ([agrees, bad].every((edge) => beyond(Number(text) / 100, edge) === beyond(off, edge))) break
  }
  return `${text} %`
}

export interface KnownHole {
  /** Of the hole, in `areaUnit`. */
  area: number
  areaUnit: 'in2' | 'cm2' | 'ft2' | 'm2'
  /** Discharge coefficient, 0.611 when left out. */
  coefficient?: number | undefined
  /** Across the hole, Pa; its sign does not matter. */
  pressure: number
  flowUnit: 'cfm' | 'm3/h' | 'L/s'
  /** Of the air in the hole, kg/m3; 1.2041 when left out. */
  density?: number | undefined
  /** What was measured through it, or with the hole open less with it closed; in `flowUnit`. */
  measured?: number | undefined
}

export interface KnownHoleFlow {
  flow: number
  unit: KnownHole['flowUnit']
  /** Measured over computed, less 1; with a measured flow only. */
  off?: number
  check: CheckResult
  working: Step[]
}

/**
 * The flow through a sharp-edged hole, `Q = Cd A √(2 ΔP / ρ)`, which in cfm, in2 and Pa is `1.762 Cd A √ΔP` at 20 degC, and how
 * a measured flow compares with it. Source: physics of an orifice.
 *
 * @throws RangeError when a number is not above zero, or the pressure is zero
 * @example knownHole({ area: 100, areaUnit: 'in2', coefficient: 0.6, pressure: 50, flowUnit: 'cfm' }).flow.toFixed(1) // '747.5'
 */
export function knownHole(hole: KnownHole): KnownHoleFlow {
  const { area, areaUnit, coefficient = usualDischarge, flowUnit, density = referenceDensity, measured } = hole
  const pressure = Math.abs(hole.pressure)
  for (const [name, value] of Object.entries({ area, coefficient, pressure, density, measured: measured ?? 1 })) {
    if (!(value >= 1e-9 && value <= 1e9))
      throw new RangeError(say`The ${name} of a known hole must be a number above zero, and of a size that occurs.`)
  }
  const square = convert(area, areaUnit, 'm2')
  const flow = convert(coefficient * square * Math.sqrt((2 * pressure) / density) * 3600, 'm3/h', flowUnit)
  const working: Step[] = [
    {
      step: say`Flow through a known hole`,
      formula: 'Q = Cd × A × √(2 × ΔP / ρ)',
      values: named(['Cd', coefficient], ['A', square, 'm2'], ['ΔP', pressure, 'Pa'], ['ρ', density, 'kg/m3']),
      result: `${short(convert(flow, flowUnit, 'L/s') / 1000)} m3/s`,
      source: say`physics of an orifice`,
      for: [],
    },
  ]
  if (measured === undefined) {
    const text = say`${short(flow, 3)} ${flowUnit} must flow through it. Measure with the hole open and closed, and compare the difference.`
    return { flow, unit: flowUnit, check: { id: 'known-hole', outcome: 'not checked', text }, working }
  }
  const off = measured / flow - 1
  const found = `${short(measured, 4)} ${flowUnit}`
  const expected = say`${short(flow, 4)} ${flowUnit}, within ${100 * agrees} %`
  const said =
    off < 0
      ? say`The measured flow is ${percentOf(off)} below what the known hole lets through`
      : say`The measured flow is ${percentOf(off)} above what the known hole lets through`
  if (!beyond(off, agrees)) {
    const text = say`${said}: they agree.`
    return { flow, unit: flowUnit, off, check: { id: 'known-hole', outcome: 'good', text, found, expected }, working }
  }
  const text = say`${said}. Check range, hoses and units; if they are right, have the device calibrated.`
  const outcome = beyond(off, bad) ? 'bad' : 'doubtful'
  return { flow, unit: flowUnit, off, check: { id: 'known-hole', outcome, text, found, expected }, working }
}
