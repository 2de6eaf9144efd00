/** The steps from the readings to the leaks, each with its numbers, for a reader with a hand calculator. */
import type { Sheet } from '../sheet/schema.ts'
import { convert } from '../units/convert.ts'
import { referenceDensity, referenceViscosity } from './air.ts'
import type { Readings } from './flow.ts'
import { errorAt } from './fit.ts'
import { type Leak, type ReduceOptions, targetOf } from './leak.ts'
import type { Step } from './report.ts'
import { named, short } from './say.ts'
import { studentT } from './student-t.ts'
import { instrumentParts, usualExponentUncertainty } from './uncertainty.ts'

/** `air`: only figures at standard conditions rest on this step. */
export type ChainStep = Omit<Step, 'for'> & { air?: true }

function numbered(values: readonly string[]): string {
  return values.length === 1 ? values[0]! : values.map((value, index) => `${index + 1}: ${value}`).join('; ')
}

function readingSteps(sheet: Sheet, { baseline, readings }: Readings): ChainStep[] {
  const { points, units, device } = sheet
  const means = { before: baseline.before, after: baseline.after }
  const sides = Object.entries(means).filter((side): side is [string, number] => side[1] !== undefined)
  const steps: ChainStep[] = [
    {
      step: 'Baseline',
      formula: 'P0 = (mean before + mean after) / 2',
      values: sides.length > 0 ? named(...sides.map(([side, mean]) => [side, mean, 'Pa'] as const)) : 'none read',
      result: `P0 = ${short(baseline.mean)} Pa`,
      source: 'ASTM E779, ISO 9972 (from memory)',
    },
    {
      step: 'Pressure across the leaks',
      formula: 'ΔP = |P − P0|, P inside against outside',
      values: numbered(points.map(({ pressure }) => `P = ${short(pressure)} Pa`)),
      result: numbered(readings.map(({ pressure }) => `${short(pressure)} Pa`)),
      source: 'ASTM E779, ISO 9972 (from memory)',
    },
  ]
  if (points.some((point) => 'range' in point)) {
    const values = points.map((point) => {
      if ('flow' in point) return `shown ${short(point.flow)}`
      const { coefficient, exponent } = device!.ranges[point.range]!
      return `${point.range}, ${named(['K', coefficient], ['Pdev', Math.abs(point.devicePressure), 'Pa'], ['m', exponent])}`
    })
    steps.push({
      step: 'Flow of the device',
      formula: 'Q = K × Pdev^m',
      values: numbered(values),
      result: numbered(readings.map(({ asRead }) => `${short(asRead)} ${units.flow}`)),
      source: 'certificate of the device',
    })
  }
  return steps
}

function airSteps(sheet: Sheet, { air, deviceFactor, balanceFactor }: Readings): ChainStep[] {
  if (!air || !sheet.air) return []
  const { units, device } = sheet
  const { indoor, outdoor, elevation = 0, barometer } = sheet.air
  const celsius = (value: number) => convert(value, units.temperature, 'degC')
  const place =
    barometer === undefined
      ? (['E', convert(elevation, units.length, 'm'), 'm'] as const)
      : (['p', barometer, 'Pa'] as const)
  const steps: ChainStep[] = [
    {
      step: 'Density of the air',
      formula:
        barometer === undefined
          ? 'ρ = 1.2041 × (1 − 0.0065 E / 293)^5.2553 × 293 / (T + 273)'
          : 'ρ = p / (287.055 × (T + 273.15))',
      values: named(['T indoor', celsius(indoor), '°C'], ['T outdoor', celsius(outdoor), '°C'], place),
      result: named(['ρ indoor', air.indoor], ['ρ outdoor', air.outdoor, 'kg/m3']),
      source: barometer === undefined ? 'ASTM E779 (from memory)' : 'ideal gas law',
      air: true,
    },
  ]
  if (sheet.flowBasis === 'indicated') {
    steps.push({
      step: 'Indicated to actual flow',
      formula: 'factor = √(ρ calibration / ρ device)',
      values: named(
        ['ρ calibration', device?.calibrationDensity ?? referenceDensity],
        ['ρ device', air.device, 'kg/m3'],
      ),
      result: short(deviceFactor),
      source: 'physics of an orifice',
      air: true,
    })
  }
  steps.push({
    step: 'Device to leaks',
    formula: 'factor = ρ device / ρ leak air',
    values: named(['ρ device', air.device], ['ρ leak air', air.leak, 'kg/m3']),
    result: short(balanceFactor),
    source: 'conservation of mass; ASTM E779, ISO 9972 (from memory)',
    air: true,
  })
  return steps
}

function fitSteps({ units }: Sheet, { readings }: Readings, leak: Leak): ChainStep[] {
  const coefficient = `Cread = ${short(leak.coefficientAsRead)} ${units.flow}/Pa^n`
  if (leak.line) {
    const { line } = leak
    return [
      {
        step: 'Line through the points',
        formula: 'ln Q = ln Cread + n ln ΔP, least squares',
        values: numbered(readings.map(({ pressure, asRead }) => named(['ΔP', pressure], ['Q', asRead]))),
        result: `n = ${short(leak.exponent)}, ${coefficient}`,
        source: 'ASTM E779, ISO 9972 (from memory)',
      },
      {
        step: 'Scatter about the line',
        formula: 's(x) = s × √(1/N + (x − x̄)² / Sxx), limits Q × exp(± t s(x)), x = ln ΔP',
        values: named(
          ['s', line.residual],
          ['N', line.count],
          ['x̄', line.meanX],
          ['Sxx', line.sumSquares],
          ['t', studentT(line.count - 2)],
        ),
        result: named(['standard error of n', line.slopeError], ['of ln C', line.interceptError]),
        source: 'ASTM E779 Annex A1, ISO 9972 Annex C (from memory)',
      },
    ]
  }
  const { pressure, asRead } = readings[leak.used!]!
  return [
    {
      step: 'One point',
      formula: 'Cread = Q / ΔP^n',
      values: named(['Q', asRead, units.flow], ['ΔP', pressure, 'Pa'], ['n', leak.exponent]),
      result: coefficient,
      source: 'common practice, no source',
    },
  ]
}

/** How the half-width of a flow comes about; nothing when the fit alone gives it. */
function limitSteps(sheet: Sheet, { readings }: Readings, leak: Leak, options: ReduceOptions): ChainStep[] {
  const target = targetOf(sheet)
  const alone = options.instrumentUncertainty === false
  if (leak.line && alone) return []
  const from = leak.line ? target : readings[leak.used!]!.pressure
  const { flow, pressure } = instrumentParts(sheet.instrument, from)
  const scatter = leak.line
    ? (['t s(x)', studentT(leak.line.count - 2) * errorAt(leak.line, Math.log(target))] as const)
    : (['u(n)', sheet.exponentUncertainty ?? usualExponentUncertainty] as const)
  const terms = [leak.line ? '(t s(x))²' : '(2 u(n) ln(P / ΔP))²', ...(alone ? [] : ['flow²', '(n × pressure)²'])]
  return [
    {
      step: `95 % half-width at P, here ${target} Pa`,
      formula: `√(${terms.join(' + ')})`,
      values: named(
        scatter,
        ...(alone
          ? []
          : ([
              ['flow', flow],
              ['pressure', pressure],
            ] as const)),
        ['n', leak.exponent],
        ...(leak.line ? [] : [['ΔP', from, 'Pa'] as const]),
      ),
      result: `${short(100 * leak.half(target))} %${leak.line ? ', as a logarithm' : ''}`,
      source: 'JCGM 100, 5.1.2',
    },
  ]
}

function standardSteps(sheet: Sheet, { air, deviceFactor, balanceFactor }: Readings, leak: Leak): ChainStep[] {
  const { units } = sheet
  const unit = `${units.flow}/Pa^n`
  const iso = sheet.procedure === 'iso-9972'
  const steps: ChainStep[] = []
  if (air) {
    steps.push({
      step: 'Standard conditions',
      formula: `factor = ${iso ? '' : '(μ/μ0)^(2n−1) × '}(ρ/ρ0)^(1−n), leak air`,
      values: named(
        ...(iso ? [] : [['μ/μ0', air.leakViscosity / referenceViscosity] as const]),
        ['ρ/ρ0', air.leak / referenceDensity],
        ['n', leak.exponent],
      ),
      result: short(leak.standard),
      source: iso ? 'ISO 9972 (from memory)' : 'ASTM E779; Roulet, equation 4.15',
      air: true,
    })
  }
  const factors: (readonly [string, number, string?])[] = [['Cread', leak.coefficientAsRead, unit]]
  if (air) factors.push(['actual', deviceFactor], ['leaks', balanceFactor], ['standard', leak.standard])
  if (leak.factor !== 1) factors.push(['one-point factor', leak.factor])
  steps.push({
    step: leak.factor === 1 ? 'Coefficient' : 'Coefficient, with the one-point factor of 1.1',
    formula: `C = Cread × factors`,
    values: named(...factors),
    result: `C = ${short(leak.coefficient)} ${unit}${air ? '' : ', no air correction'}`,
    source: air ? 'the steps above' : 'temperatures not given',
    air: true,
  })
  return steps
}

/** Every step from the readings to the coefficient, in order. */
export function chainSteps(sheet: Sheet, readings: Readings, leak: Leak, options: ReduceOptions): ChainStep[] {
  return [
    ...readingSteps(sheet, readings),
    ...fitSteps(sheet, readings, leak),
    ...limitSteps(sheet, readings, leak, options),
    ...airSteps(sheet, readings),
    ...standardSteps(sheet, readings, leak),
  ]
}

/** What the point that a one-point test uses is called in a note, when there are several. */
export function usedPoint(sheet: Sheet, leak: Leak): string | undefined {
  if (leak.used === undefined || sheet.points.length < 2) return undefined
  return `Uses point ${leak.used + 1}, the nearest to ${targetOf(sheet)} Pa.`
}
