/** The steps that lead to the half-width of a flow: each part of the budget, and what they come to. */
import type { Sheet } from '../sheet/schema.ts'
import { type Part, type PartName, type Uncertainty, partWords } from './budget.ts'
import { sharesAt } from './estimate.ts'
import type { Readings } from './flow.ts'
import { type Leak, type ReduceOptions, targetOf } from './leak.ts'
import { averagingOf, calmScatter } from './noise.ts'
import type { ChainStep } from './report.ts'
import type { Basis } from './scatter-alone.ts'
import { named, short } from './say.ts'
import { instrumentParts, usualExponentUncertainty } from './uncertainty.ts'
import { say } from '../words/say.ts'

type Value = readonly [name: string, value: number, unit?: string]

const source = 'JCGM 100, 5.1.2'
const percent = (share: number) => `${short(100 * share)} %`
const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)

/** Scatter of one pressure reading, and what it and the drift make the baseline uncertain by. */
function baselineSteps({ baseline: typed, averaging, pressureScatter }: Sheet, { baseline }: Basis): ChainStep[] {
  const { before, after } = typed
  const sides = [before, after].filter((side) => side.length > 0)
  const { long, short: brief } = averagingOf(averaging)
  const steps: ChainStep[] = [
    {
      step: say`Scatter of one pressure reading`,
      formula: say`s = √(squares / freedom)${long === brief ? '' : say` × √(baseline / reading), of the averaging times`}`,
      values: named(
        [say`squares`, baseline.squares],
        [say`freedom`, baseline.freedom],
        ...(long === brief
          ? []
          : ([
              [say`baseline`, long, 's'],
              [say`reading`, brief, 's'],
            ] as const)),
      ),
      result: `s = ${short(baseline.reading)} Pa`,
      source: baseline.assumed
        ? say`few baseline readings: ${calmScatter} Pa as in calm weather is taken with them, common practice, no source`
        : pressureScatter === undefined
          ? say`readings of the baseline; JCGM 100, 4.2`
          : say`readings of the baseline and the scatter that was given; JCGM 100, 4.2`,
    },
  ]
  if (sides.length === 0) return steps
  const scatter = baseline.reading * Math.sqrt(brief / long)
  steps.push({
    step: say`Uncertainty of the baseline`,
    formula: sides.length === 2 ? 's0 × √(1 / k1 + 1 / k2) / 2' : 's0 / √(k1)',
    values: named(['s0', scatter, 'Pa'], ...sides.map((side, index) => [`k${index + 1}`, side.length] as const)),
    result: `u0 = ${short(baseline.mean)} Pa`,
    source: 'JCGM 100, 4.2',
  })
  if (baseline.drift > 0) {
    const [first, second] = sides.map((side) => total(side) / side.length)
    steps.push({
      step: say`Drift of the baseline`,
      formula: say`|before − after| / √(12)`,
      values: named([say`before`, first!, 'Pa'], [say`after`, second!, 'Pa']),
      result: `ud = ${short(baseline.drift)} Pa`,
      source: 'JCGM 100, 4.3.7',
    })
  }
  return steps
}

/** How each reading bears on the result: not said of a single one, whose weight is 1. */
function shareStep({ readings }: Readings, leak: Leak, at: number, slope: number): ChainStep[] {
  const { line, stations, byWeights } = leak
  const [high, low] = stations
  if (!line && !low && high!.from.length === 1) return []
  const air = slope === 0 ? '' : ' + a'
  const x = Math.log(at) + slope
  const common: Value[] = [['P', at, 'Pa'], ...(slope === 0 ? [] : ([['a', slope]] as const))]
  const step = say`Weight of each reading`
  if (byWeights) {
    const formula = say`w = what ln Q(P) changes by with ln Q of the reading`
    const result = `w = ${leak
      .shares(x)
      .map((share) => short(share))
      .join(', ')}`
    return [{ step, formula, values: named(...common), result, source: say`the weighted line` }]
  }
  if (line) {
    const weights = readings.map(({ pressure }) => {
      const share = (Math.log(pressure) - line.meanX) / line.sumSquares
      return short(1 / line.count + (x - line.meanX) * share)
    })
    const known = named(['N', line.count], ['x̄', line.meanX], ['Sxx', line.sumSquares], ...common)
    return [
      {
        step,
        formula: `w = 1 / N + (ln(P)${air} − x̄) × (ln(ΔP) − x̄) / Sxx`,
        values: `${known}, ΔP = ${readings.map(({ pressure }) => short(pressure)).join(', ')}`,
        result: `w = ${weights.join(', ')}`,
        source: say`least squares`,
      },
    ]
  }
  if (!low) {
    const repeats = high!.from.length
    const result = `w = ${short(1 / repeats)}`
    return [{ step, formula: 'w = 1 / k', values: named(['k', repeats]), result, source: 'JCGM 100, 4.2' }]
  }
  const [share, other] = sharesAt(x, stations)
  return [
    {
      step,
      formula: say`w = (ln(P / P2)${air}) / ln(P1 / P2), of the readings near P1 together; the rest of 1 of those near P2`,
      values: named(...common, ['P1', high!.pressure, 'Pa'], ['P2', low.pressure, 'Pa']),
      result: `w = ${short(share)}, ${short(other)}`,
      source: say`ASTM E1827 (from memory)`,
    },
  ]
}

/** The formula of a part, with the numbers that go into it. `w`: the weights above. */
function partOf(
  { part }: Part,
  sheet: Sheet,
  { readings }: Readings,
  { exponent, stations }: Leak,
  { baseline, variances, factor, even, wind, devices }: Basis,
  shares: readonly number[],
  at: number,
  slope: number,
): { formula: string; values: Value[] } {
  const sum = (of: (pressure: number) => number) =>
    Math.abs(total(readings.map(({ pressure }, index) => shares[index]! * of(pressure))))
  const n: Value = ['n', exponent]
  const carried: Value = [say`sum of w / ΔP`, sum((pressure) => 1 / pressure)]
  switch (part) {
    case 'device': {
      const flow: Value = [say`flow`, instrumentParts(sheet.instrument, 50).flow]
      const fans = sheet.points.some((point) => 'fans' in point)
      if (devices.length === 1 && !fans) return { formula: say`flow / 2`, values: [flow] }
      const values = devices.map((one, index): Value => {
        const u = total(one.map((each, row) => each * shares[row]!))
        return [`w${index + 1}`, fans ? u : (2 * u) / flow[1]]
      })
      if (fans) {
        const formula = say`√(${values.map(([name]) => `${name}²`).join(' + ')}), w of each fan: its share of the flow × half its uncertainty`
        return { formula, values }
      }
      return {
        formula: say`√(${values.map(([name]) => `${name}²`).join(' + ')}) × flow / 2, w of each range`,
        values: [...values, flow],
      }
    }
    case 'gauge':
      return {
        formula: say`n × sum of w × pressure / 2`,
        values: [
          n,
          [say`sum of w × pressure`, sum((pressure) => instrumentParts(sheet.instrument, pressure).pressure)],
        ],
      }
    case 'baseline':
      if (wind === 1) return { formula: say`n × u0 × sum of w / ΔP`, values: [n, ['u0', baseline.mean, 'Pa'], carried] }
      return {
        formula: say`n × u0 × √(wind) × sum of w / ΔP; wind: scatter of points and baseline together, over that of the baseline`,
        values: [n, ['u0', baseline.mean, 'Pa'], [say`wind`, wind], carried],
      }
    case 'drift':
      return { formula: say`n × ud × sum of w / ΔP`, values: [n, ['ud', baseline.drift, 'Pa'], carried] }
    case 'wind': {
      const own = total(shares.map((share, index) => share ** 2 * variances[index]!))
      const squares = total(shares.map((share) => share ** 2))
      if ((factor - 1) * own < even * squares) {
        return {
          formula: say`√(sum of w² × (f² + (n × s / ΔP)²) + e² × sum of w²), f = n × s / P, at least 0.5 %; e: scatter beyond the expected, alike in each`,
          values: [
            [say`sum of w² × (f² + (n × s / ΔP)²)`, own],
            ['e', Math.sqrt(even)],
            [say`sum of w²`, squares],
          ],
        }
      }
      return {
        formula: say`√(factor × sum of w² × (f² + (n × s / ΔP)²)), f = n × s / P, at least 0.5 %`,
        values: [
          [say`factor`, factor],
          [say`sum of w² × (f² + (n × s / ΔP)²)`, own],
        ],
      }
    }
    default:
      return {
        formula: slope === 0 ? 'u(n) × |ln(P / ΔP)|' : 'u(n) × |ln(P / ΔP) + a|',
        values: [
          ['u(n)', sheet.exponentUncertainty ?? usualExponentUncertainty],
          ['P', at, 'Pa'],
          ['ΔP', stations[0]!.pressure, 'Pa'],
          ...(slope === 0 ? [] : ([['a', slope]] as const)),
        ],
      }
  }
}

const symbols: Record<PartName, string> = {
  device: 'u1',
  gauge: 'u2',
  baseline: 'u3',
  drift: 'u4',
  wind: 'u5',
  exponent: 'u6',
  size: 'u7',
}

/** The half-width from its parts. */
function sumStep(
  step: string,
  { parts, half, standard, freedom }: Uncertainty,
  leak: Leak,
  meaning: string,
): ChainStep {
  const squares = parts.map(({ part }) => `${symbols[part]}²`).join(' + ')
  const why =
    freedom === undefined ? say`k = 2` : say`k = Student’s t of ${freedom} effective degrees of freedom, at least 2`
  return {
    step,
    formula: `k × √(${squares}), ${why}${meaning}`,
    values: named(...parts.map(({ part, u }) => [symbols[part], u] as const), ['k', half / standard]),
    result: leak.limits(1, half).high === 1 + half ? percent(half) : say`${percent(half)}, as a logarithm`,
    source: say`JCGM 100, 5.1.2 and G.4`,
  }
}

/** Without the instrument: of stations the assumed exponent and the repeats; of a line the step of the fit says all. */
function aloneStep(sheet: Sheet, leak: Leak, at: number, slope: number, raw: boolean, step: string): ChainStep[] {
  if (leak.line) return []
  const of = leak.uncertainty(at, raw)
  const known = leak.assumed
    ? (sheet.exponentUncertainty ?? usualExponentUncertainty) *
      Math.abs(Math.log(at / leak.stations[0]!.pressure) + slope)
    : 0
  const repeats = Math.sqrt(Math.max(0, of.standard ** 2 - known ** 2))
  const values: Value[] = [
    ['k', of.standard === 0 ? 2 : of.half / of.standard],
    ...(leak.assumed
      ? ([
          ['u(n)', sheet.exponentUncertainty ?? usualExponentUncertainty],
          ['P', at, 'Pa'],
          ['ΔP', leak.stations[0]!.pressure, 'Pa'],
          ...(slope === 0 ? [] : ([['a', slope]] as const)),
        ] as const)
      : []),
    ['u', repeats],
  ]
  const carried = slope === 0 ? '(u(n) × ln(P / ΔP))² + ' : '(u(n) × (ln(P / ΔP) + a))² + '
  return [
    {
      step,
      formula: say`k × √(${leak.assumed ? carried : ''}u²), u of the repeats`,
      values: named(...values),
      result: leak.assumed ? percent(of.half) : say`${percent(of.half)}, as a logarithm`,
      source,
    },
  ]
}

/**
 * How the half-width of a flow comes about, for flows as read or at standard conditions. At standard conditions every part
 * is worked out; as read only what they come to, and only where an air correction makes it another.
 */
export function limitSteps(
  sheet: Sheet,
  readings: Readings,
  leak: Leak,
  { instrumentUncertainty }: ReduceOptions,
  of: 'as read' | 'standard',
): ChainStep[] {
  const raw = of === 'as read'
  const at = targetOf(sheet)
  const { air } = readings
  if (raw && !air) return []
  const marked = (steps: ChainStep[]) => {
    if (air && !raw) for (const one of steps) one.air = true
    return steps
  }
  const slope = raw ? 0 : leak.standardSlope
  const meaning = slope === 0 ? '' : ', a = 2 ln(μ/μ0) − ln(ρ/ρ0)'
  const step = raw ? say`95 % half-width at P, here ${at} Pa, as read` : say`95 % half-width at P, here ${at} Pa`
  const { basis } = leak
  if (!basis || instrumentUncertainty === false) return marked(aloneStep(sheet, leak, at, slope, raw, step))
  const whole = leak.uncertainty(at, raw)
  if (raw) return [sumStep(step, whole, leak, meaning)]
  const shares = leak.shares(Math.log(at) + slope)
  const parts = whole.parts.map((part): ChainStep => {
    const { formula, values } = partOf(part, sheet, readings, leak, basis, shares, at, slope)
    return {
      step: say`Part: ${partWords(part.part)}`,
      formula,
      values: named(...values),
      result: percent(part.u),
      source,
    }
  })
  return marked([
    ...baselineSteps(sheet, basis),
    ...shareStep(readings, leak, at, slope),
    ...parts,
    sumStep(step, whole, leak, meaning),
  ])
}
