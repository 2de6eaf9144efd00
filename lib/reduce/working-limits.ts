/** The steps that lead to the half-width of a flow. */
import type { Sheet } from '../sheet/schema.ts'
import { errorAt } from './fit.ts'
import type { Readings } from './flow.ts'
import { type Leak, type ReduceOptions, sharesAt, targetOf } from './leak.ts'
import type { ChainStep } from './report.ts'
import { named, short } from './say.ts'
import { studentT } from './student-t.ts'
import { instrumentPart, instrumentParts, quadrature, usualExponentUncertainty } from './uncertainty.ts'
import { say } from '../words/say.ts'

type Values = (readonly [name: string, value: number, unit?: string])[]

/** A half-width before repeated readings add to it. */
interface Parts {
  formula: string
  values: Values
  width: number
  /** Standard uncertainty that the repeats add, 0 without them. */
  repeats: number
}

const source = 'JCGM 100, 5.1.2'

function regressionStep(sheet: Sheet, { line, exponent, half }: Leak, at: number): ChainStep {
  const { flow, pressure } = instrumentParts(sheet.instrument, at)
  return {
    step: say`95 % half-width at P, here ${at} Pa`,
    formula: say`√((t s(x))² + flow² + (n × pressure)²)`,
    values: named(
      ['t s(x)', studentT(line!.count - 2) * errorAt(line!, Math.log(at))],
      [say`flow`, flow],
      [say`pressure`, pressure],
      ['n', exponent],
    ),
    result: say`${short(100 * half(at))} %, as a logarithm`,
    source,
  }
}

/** `slope`: how the air correction changes with the exponent, 0 for flows as read. */
function onePointParts(sheet: Sheet, { stations, exponent }: Leak, at: number, slope: number, alone: boolean): Parts {
  const [{ pressure: taken, scatter }] = stations as [Leak['stations'][number]]
  const uncertainty = sheet.exponentUncertainty ?? usualExponentUncertainty
  const { flow, pressure } = instrumentParts(sheet.instrument, taken)
  const carried = slope === 0 ? '(2 × u(n) × ln(P / ΔP))²' : '(2 × u(n) × (ln(P / ΔP) + a))²'
  return {
    formula: alone ? `√(${carried})` : say`√(${carried} + flow² + (n × pressure)²)`,
    values: [
      ['u(n)', uncertainty],
      ['P', at, 'Pa'],
      ['ΔP', taken, 'Pa'],
      ...(alone
        ? []
        : ([
            [say`flow`, flow],
            ['n', exponent],
            [say`pressure`, pressure],
          ] as const)),
      ...(slope === 0 ? [] : ([['a', slope]] as const)),
    ],
    width: quadrature(
      2 * uncertainty * (Math.log(at / taken) + slope),
      alone ? 0 : instrumentPart(sheet.instrument, exponent, taken),
    ),
    repeats: scatter?.mean ?? 0,
  }
}

function twoPointParts(sheet: Sheet, { stations, exponent }: Leak, at: number, slope: number, alone: boolean): Parts {
  const [high, low] = stations as [Leak['stations'][number], Leak['stations'][number]]
  const shares = sharesAt(at * Math.exp(slope), stations)
  const [one, other] = stations.map(({ pressure }) =>
    alone ? 0 : instrumentPart(sheet.instrument, exponent, pressure),
  )
  return {
    formula: say`√((w × p1)² + ((1 − w) × p2)²), w = (ln(P / P2)${slope === 0 ? '' : ' + a'}) / ln(P1 / P2), p = √(flow² + (n × pressure)²) at P1 and at P2`,
    values: [
      ['w', shares[0]],
      ['p1', one!],
      ['p2', other!],
      ['P', at, 'Pa'],
      ['P1', high.pressure, 'Pa'],
      ['P2', low.pressure, 'Pa'],
      ...(slope === 0 ? [] : ([['a', slope]] as const)),
    ],
    width: quadrature(shares[0] * one!, shares[1] * other!),
    repeats: quadrature(...stations.map(({ scatter }, index) => shares[index]! * (scatter?.mean ?? 0))),
  }
}

/**
 * How the half-width of a flow comes about, for flows as read or at standard conditions. Nothing when the fit alone gives
 * it, and nothing at standard conditions without an air correction, where it is that of the flow as read.
 */
export function limitSteps(
  sheet: Sheet,
  { air }: Readings,
  leak: Leak,
  { instrumentUncertainty }: ReduceOptions,
  of: 'as read' | 'standard',
): ChainStep[] {
  const raw = of === 'as read'
  const at = targetOf(sheet)
  const alone = instrumentUncertainty === false
  if (leak.line) return alone || !raw ? [] : [regressionStep(sheet, leak, at)]
  if (!raw && !air) return []
  const parts = leak.stations.length > 1 ? twoPointParts : onePointParts
  const { formula, values, width, repeats } = parts(sheet, leak, at, raw ? 0 : leak.standardSlope, alone)
  const written = (half: number) =>
    leak.stations.length > 1 ? say`${short(100 * half)} %, as a logarithm` : `${short(100 * half)} %`
  const meaning = raw ? '' : ', a = 2 ln(μ/μ0) − ln(ρ/ρ0)'
  const mark = raw ? {} : { air: true as const }
  const step = air && raw ? say`95 % half-width at P, here ${at} Pa, as read` : say`95 % half-width at P, here ${at} Pa`
  const first = {
    step,
    formula: `${formula}${meaning}`,
    values: named(...values),
    result: written(width),
    source,
    ...mark,
  }
  if (repeats === 0) return [first]
  const half = leak.half(at, raw)
  const standard = quadrature(width / 2, repeats)
  return [
    first,
    {
      step: say`${step}, with the scatter of the repeats`,
      formula: say`k × √((U / 2)² + u²), k = Student’s t of the effective degrees of freedom, at least 2`,
      values: named(['U', width], ['u', repeats], ['k', half / standard]),
      result: written(half),
      source: say`JCGM 100, 5.1.2 and G.4`,
      ...mark,
    },
  ]
}
