/**
 * Limits from the scatter of the readings alone, as the annexes of the standards have them: of a regression Student's t of
 * N - 2 about the line, of stations that of their repeats, and the assumed exponent. Source: ASTM E779 Annex A1, ISO 9972
 * Annex C (from memory); JCGM 100, 5.1.2 and G.4.
 */
import type { Sheet } from '../sheet/schema.ts'
import { type Uncertainty, coverage, quadrature } from './budget.ts'
import { type Estimate, sharesAt } from './estimate.ts'
import { type Line, errorAt } from './fit.ts'
import type { BaselineNoise } from './noise.ts'
import { studentT } from './student-t.ts'
import { type OrganicLine, heightError } from './wloc.ts'
import { usualExponentUncertainty } from './uncertainty.ts'

/** What is unsure: the flow at ln of a pressure (`slope`: how its air correction changes with the exponent), the exponent. */
export interface Unsure {
  at(x: number, slope: number): Uncertainty
  exponent: Uncertainty
  /** What the whole budget rests on; nothing where the scatter alone was asked for. */
  basis?: Basis
}

export interface Basis {
  baseline: BaselineNoise
  /** Variance of the logarithm of each reading, and by what the points raise it. */
  variances: readonly number[]
  factor: number
  /** The same excess as a variance that every reading has alike, beside its own. */
  even: number
  /** By what the points raise the variance of the mean baseline. */
  wind: number
  freedom: number
  /** Of each range or fan: what its error does to the logarithm of each reading's flow; flows that were shown are of one. */
  devices: readonly (readonly number[])[]
}

const ofLine = (line: Line, standard: number): Uncertainty => ({
  half: studentT(line.count - 2) * standard,
  standard,
  freedom: line.count - 2,
  parts: [],
})

/** Of the weighted line: what its points are uncertain by, as they scatter about it. */
const ofWeights = ({ scatter, count }: OrganicLine, error: number): Uncertainty => {
  const standard = error * Math.sqrt(scatter)
  return { half: studentT(count - 2) * standard, standard, freedom: count - 2, parts: [] }
}

/** Parts that are known, as one standard uncertainty, and parts known from few repeats. */
function ofRepeats(known: number, repeats: readonly { mean: number; freedom: number }[]): Uncertainty {
  const some = repeats.filter(({ mean }) => mean > 0)
  const standard = quadrature(known, ...some.map(({ mean }) => mean))
  if (some.length === 0) return { half: 2 * standard, standard, parts: [] }
  const effective = 1 / some.reduce((sum, { mean, freedom }) => sum + (mean / standard) ** 4 / freedom, 0)
  const freedom = Math.max(1, Math.floor(effective))
  return { half: coverage(freedom) * standard, standard, freedom, parts: [] }
}

export function scatterAlone(sheet: Sheet, found: Estimate): Unsure {
  const { line, stations, assumed, weighted, byWeights } = found
  if (byWeights && weighted) {
    return {
      at: (x) => ofWeights(weighted, heightError(weighted, x)),
      exponent: ofWeights(weighted, weighted.slopeError),
    }
  }
  if (line) return { at: (x) => ofLine(line, errorAt(line, x)), exponent: ofLine(line, line.slopeError) }
  const repeats = (shares: readonly number[]) =>
    stations.map(({ scatter }, index) => ({
      mean: Math.abs(shares[index]! * (scatter?.mean ?? 0)),
      freedom: scatter?.freedom ?? 1,
    }))
  if (assumed) {
    const uncertainty = sheet.exponentUncertainty ?? usualExponentUncertainty
    const from = Math.log(stations[0]!.pressure)
    return {
      at: (x, slope) => ofRepeats(uncertainty * Math.abs(x + slope - from), repeats([1])),
      exponent: ofRepeats(uncertainty, []),
    }
  }
  const span = Math.log(stations[0]!.pressure / stations[1]!.pressure)
  return {
    at: (x, slope) => ofRepeats(0, repeats(sharesAt(x + slope, stations))),
    exponent: ofRepeats(0, repeats([1 / span, -1 / span])),
  }
}
