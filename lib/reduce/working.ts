/** The steps from the readings to the leaks, each with its numbers, for a reader with a hand calculator. */
import type { Sheet } from '../sheet/schema.ts'
import { convert } from '../units/convert.ts'
import { referenceDensity, referenceViscosity } from './air.ts'
import type { Reading, Readings } from './flow.ts'
import { type Leak, type ReduceOptions, targetOf } from './leak.ts'
import type { ChainStep } from './report.ts'
import { named, short } from './say.ts'
import { repeatsWithin } from './stations.ts'
import { studentT } from './student-t.ts'
import { thresholds } from './threshold.ts'
import { limitSteps } from './working-limits.ts'
import type { OrganicLine } from './wloc.ts'
import { say } from '../words/say.ts'

/** A text of each reading, behind its number when there are several. */
function numbered(readings: readonly Reading[], textOf: (reading: Reading, index: number) => string): string {
  const texts = readings.map(textOf)
  return texts.length === 1 ? texts[0]! : texts.map((text, index) => `${readings[index]!.number}: ${text}`).join('; ')
}

/** With the sign of inside against outside. A minus sign typed while pressurizing is taken as that of swapped hoses. */
function signed(pressure: number, direction: Sheet['direction']): number {
  return direction === 'depressurize' ? -Math.abs(pressure) : pressure
}

function readingSteps(sheet: Sheet, { baseline, readings }: Readings): ChainStep[] {
  const { points, units, device } = sheet
  const means = { [say`before`]: baseline.before, [say`after`]: baseline.after }
  const sides = Object.entries(means).filter((side): side is [string, number] => side[1] !== undefined)
  const steps: ChainStep[] = [
    {
      step: say`Baseline`,
      formula:
        sides.length === 2
          ? say`P0 = (before + after) / 2, of the means`
          : sides.length === 1
            ? sides[0]![0] === say`before`
              ? say`P0 = before, of the mean`
              : say`P0 = after, of the mean`
            : 'P0 = 0',
      values: sides.length > 0 ? named(...sides.map(([side, mean]) => [side, mean, 'Pa'] as const)) : say`none read`,
      result: `P0 = ${short(baseline.mean)} Pa`,
      source: say`ASTM E779, ISO 9972 (from memory)`,
    },
    {
      step: say`Pressure across the leaks`,
      formula: say`ΔP = |P − P0|, P inside against outside`,
      values: numbered(readings, (_, index) => `P = ${short(signed(points[index]!.pressure, sheet.direction))} Pa`),
      result: numbered(readings, ({ pressure }) => `${short(pressure)} Pa`),
      source: say`ASTM E779, ISO 9972 (from memory)`,
    },
  ]
  const fansOf = (index: number) => {
    const point = points[index]!
    return ('fans' in point && point.fans) || []
  }
  if (points.some((_, index) => fansOf(index).length > 0)) {
    steps.push({
      step: say`Flow of all fans`,
      formula: 'Q = ΣQ',
      values: numbered(readings, (_, index) =>
        fansOf(index)
          .map(({ name, flow, values }) => `“${name}” ${short(flow)}${values ? ` (${values})` : ''}`)
          .join(' + '),
      ),
      result: numbered(readings, ({ asRead }) => `${short(asRead)} ${units.flow}`),
      source: say`conservation of mass`,
    })
  }
  if (points.some((point) => 'range' in point)) {
    const flowOf = (_: Reading, index: number) => {
      const point = points[index]!
      if ('flow' in point) return say`shown ${short(point.flow)}`
      const { coefficient, exponent } = device!.ranges[point.range]!
      return `“${point.range}”, ${named(['K', coefficient], ['Pdev', Math.abs(point.devicePressure), 'Pa'], ['m', exponent])}`
    }
    steps.push({
      step: say`Flow of the device`,
      formula: 'Q = K × Pdev^m',
      values: numbered(readings, flowOf),
      result: numbered(readings, ({ asRead }) => `${short(asRead)} ${units.flow}`),
      source: say`certificate of the device`,
    })
  }
  return steps
}

/** What `corrections: 'threshold'` leaves of the air that was typed. */
function thresholdStep({ corrections, air, units }: Sheet, found: Readings['air']): ChainStep[] {
  if (corrections !== 'threshold' || !air) return []
  const [indoor, outdoor] = [air.indoor, air.outdoor].map((value) => convert(value, units.temperature, 'degF'))
  const place =
    air.barometer === undefined
      ? ([say`elevation`, convert(air.elevation ?? 0, units.length, 'ft'), 'ft'] as const)
      : ([say`barometer`, air.barometer, 'Pa'] as const)
  return [
    {
      step: say`Whether the air is corrected for`,
      formula: say`altitude above ${thresholds.elevation} ft or a difference of temperatures beyond ${thresholds.difference} °F`,
      values: named(place, [say`difference`, Math.abs(indoor! - outdoor!), '°F']),
      result: found ? say`altitude and temperature` : say`none`,
      source: say`ANSI/RESNET/ICC 380 (from memory)`,
      air: true,
    },
  ]
}

function airSteps(sheet: Sheet, readings: Readings): ChainStep[] {
  const { air, deviceFactor, balanceFactor } = readings
  if (!air || !sheet.air) return thresholdStep(sheet, air)
  const { units, device } = sheet
  const { indoor, outdoor, elevation = 0, barometer } = sheet.air
  const celsius = (value: number) => convert(value, units.temperature, 'degC')
  const place =
    barometer === undefined
      ? (['E', convert(elevation, units.length, 'm'), 'm'] as const)
      : (['p', barometer, 'Pa'] as const)
  const steps: ChainStep[] = [
    ...thresholdStep(sheet, air),
    {
      step: say`Density of the air`,
      formula:
        barometer === undefined
          ? 'ρ = 1.2041 × (1 − 0.0065 E / 293)^5.2553 × 293 / (T + 273)'
          : 'ρ = p / (287.055 × (T + 273.15))',
      values: named([say`T indoor`, celsius(indoor), '°C'], [say`T outdoor`, celsius(outdoor), '°C'], place),
      result: named([say`ρ indoor`, air.indoor], [say`ρ outdoor`, air.outdoor, 'kg/m3']),
      source: barometer === undefined ? say`ASTM E779 (from memory)` : say`ideal gas law`,
      air: true,
    },
  ]
  if (sheet.flowBasis === 'indicated') {
    steps.push({
      step: say`Indicated to actual flow`,
      formula: say`factor = √(ρ calibration / ρ device)`,
      values: named(
        [say`ρ calibration`, device?.calibrationDensity ?? referenceDensity],
        [say`ρ device`, air.device, 'kg/m3'],
      ),
      result: short(deviceFactor),
      source: say`physics of an orifice`,
      air: true,
    })
  }
  steps.push({
    step: say`Device to leaks`,
    formula: say`factor = ρ device / ρ leak air`,
    values: named([say`ρ device`, air.device], [say`ρ leak air`, air.leak, 'kg/m3']),
    result: short(balanceFactor),
    source: say`conservation of mass; ASTM E779, ISO 9972 (from memory)`,
    air: true,
  })
  return steps
}

/** The line by weights: the result where it was chosen, else beside the one that is. */
function weightedStep({ byWeights }: Leak, { slope, intercept }: OrganicLine): ChainStep {
  return {
    step: byWeights ? say`Weighted line, the result` : say`Weighted line, to compare`,
    formula: say`weighted line of organic correlation of ln Q against ln ΔP, weights 1 / (f² + (n × s / ΔP)²)`,
    values: '',
    result: named([say`n weighted`, slope], [say`ln C weighted`, intercept]),
    source: say`Delmotte, 2016; Kölsch and others, 2020 (abstracts read)`,
  }
}

function fitSteps({ units }: Sheet, { readings }: Readings, leak: Leak): ChainStep[] {
  const coefficient = `Cread = ${short(leak.coefficientAsRead)} ${units.flow}/Pa^n`
  if (leak.line) {
    const { line } = leak
    return [
      {
        step: say`Line through the points`,
        formula: say`ln Q = ln Cread + n ln ΔP, least squares`,
        values: numbered(readings, ({ pressure, asRead }) => named(['ΔP', pressure], ['Q', asRead])),
        result: `n = ${short(line.slope)}, Cread = ${short(Math.exp(line.intercept))} ${units.flow}/Pa^n`,
        source: say`ASTM E779, ISO 9972 (from memory)`,
      },
      {
        step: say`Scatter about the line`,
        formula: say`s(x) = s × √(1/N + (x − x̄)² / Sxx), limits Q × exp(± t s(x)), x = ln ΔP`,
        values: named(
          ['s', line.residual],
          ['N', line.count],
          ['x̄', line.meanX],
          ['Sxx', line.sumSquares],
          ['t', studentT(line.count - 2)],
        ),
        result: named([say`standard error of n`, line.slopeError], [say`of ln C`, line.interceptError]),
        source: say`ASTM E779 Annex A1, ISO 9972 Annex C (from memory)`,
      },
      ...(leak.weighted ? [weightedStep(leak, leak.weighted)] : []),
    ]
  }
  const steps = averageSteps(units, readings, leak)
  const [high, low] = leak.stations
  if (low) {
    steps.push({
      step: say`Exponent from two pressures`,
      formula: 'n = ln(Q1 / Q2) / ln(P1 / P2)',
      values: named(
        ['Q1', high!.asRead, units.flow],
        ['Q2', low.asRead, units.flow],
        ['P1', high!.pressure, 'Pa'],
        ['P2', low.pressure, 'Pa'],
      ),
      result: named(['n', leak.exponent]),
      source: say`ASTM E1827 (from memory)`,
    })
  }
  steps.push({
    step: low ? say`Coefficient of the flows as read` : say`One point`,
    formula: low ? 'Cread = Q1 / P1^n' : 'Cread = Q / ΔP^n',
    values: named(
      [low ? 'Q1' : 'Q', high!.asRead, units.flow],
      [low ? 'P1' : 'ΔP', high!.pressure, 'Pa'],
      ['n', leak.exponent],
    ),
    result: coefficient,
    source: low ? say`ASTM E1827 (from memory)` : say`common practice, no source`,
  })
  return steps
}

/** Repeated readings of a station and their mean. */
function averageSteps(units: Sheet['units'], readings: Readings['readings'], { stations }: Leak): ChainStep[] {
  return stations
    .filter(({ scatter }) => scatter)
    .map(({ from, pressure, asRead, scatter }) => ({
      step: say`Mean of repeated readings near ${short(pressure, 3)} Pa`,
      formula: say`ΔP = mean, Q = mean, of readings within ${repeatsWithin} Pa; u = s / √k of the flows at one pressure`,
      values: from
        .map(
          (index) =>
            say`point ${readings[index]!.number}: ${named(['ΔP', readings[index]!.pressure], ['Q', readings[index]!.asRead])}`,
        )
        .join('; '),
      result: say`${named(['ΔP', pressure, 'Pa'], ['Q', asRead, units.flow], ['k', from.length], ['u', 100 * scatter!.mean, '%'])}, spread ${short(100 * scatter!.spread, 3)} %`,
      source: 'JCGM 100, 4.2',
    }))
}

function standardSteps(sheet: Sheet, { air, deviceFactor, balanceFactor }: Readings, leak: Leak): ChainStep[] {
  const { units } = sheet
  const unit = `${units.flow}/Pa^n`
  const iso = sheet.procedure === 'iso-9972'
  const steps: ChainStep[] = []
  if (air) {
    steps.push({
      step: say`Standard conditions`,
      formula: say`factor = ${iso ? '' : '(μ/μ0)^(2 × n − 1) × '}(ρ/ρ0)^(1 − n), leak air`,
      values: named(
        ...(iso ? [] : [['μ/μ0', air.leakViscosity / referenceViscosity] as const]),
        ['ρ/ρ0', air.leak / referenceDensity],
        ['n', leak.exponent],
      ),
      result: short(leak.standard),
      source: iso ? say`ISO 9972 (from memory)` : say`ASTM E779; Roulet, equation 4.15`,
      air: true,
    })
  }
  const factors: (readonly [string, number, string?])[] = [['Cread', leak.coefficientAsRead, unit]]
  if (air) factors.push(['actual', deviceFactor], ['leaks', balanceFactor], ['standard', leak.standard])
  if (leak.factor !== 1) factors.push([say`one-point factor`, leak.factor])
  steps.push({
    step: leak.factor === 1 ? say`Coefficient` : say`Coefficient, with the one-point factor of 1.1`,
    formula: `C = ${factors.map(([name]) => name).join(' × ')}`,
    values: named(...factors),
    result: air
      ? `C = ${short(leak.coefficient)} ${unit}`
      : say`C = ${short(leak.coefficient)} ${unit}, no air correction`,
    source: air ? say`the steps above` : sheet.air ? say`within the thresholds` : say`temperatures not given`,
    air: true,
  })
  return steps
}

/** Every step from the readings to the coefficient, in order. */
export function chainSteps(sheet: Sheet, readings: Readings, leak: Leak, options: ReduceOptions): ChainStep[] {
  return [
    ...readingSteps(sheet, readings),
    ...fitSteps(sheet, readings, leak),
    ...limitSteps(sheet, readings, leak, options, 'as read'),
    ...airSteps(sheet, readings),
    ...standardSteps(sheet, readings, leak),
    ...limitSteps(sheet, readings, leak, options, 'standard'),
  ]
}

const counted = ['', '', say`two`, say`three`, say`four`, say`five`, say`six`]

/** Which readings the stations of a one-point or two-point test stand on, when a note has to say it. */
export function usedPoints(sheet: Sheet, { readings }: Readings, { stations }: Leak): string | undefined {
  if (stations.length === 0 || sheet.points.length === stations.length) return undefined
  const target = targetOf(sheet)
  return stations
    .map(({ from, pressure, scatter }) => {
      const near = `${stations.length === 1 ? target : short(pressure, 3)} Pa`
      if (!scatter) return say`Uses point ${readings[from[0]!]!.number}, the nearest to ${near}.`
      const many = counted[from.length] ?? from.length
      const which =
        from.length < counted.length
          ? ` (${from.map((index) => say`point ${readings[index]!.number}`).join(', ')})`
          : ''
      return say`Averages ${many} readings near ${near + which}; they spread ${short(100 * scatter.spread, 2)} %.`
    })
    .join(' ')
}
