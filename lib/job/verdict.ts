/** Which limit a test is compared with, and what comes of it. */
import {
  type Compared,
  type Limit,
  limitsFor,
  ownLimit,
  publishedLimit,
  type Scope,
  type Verdict,
  verdict,
  type Withheld,
} from '../limits/index.ts'
import { marksIn } from '../units/comma.ts'
import { convert } from '../units/convert.ts'
import { cellValue, unitAt } from './cells.ts'
import { ownLimitFigure, ownLimitUnit } from './own-limit.ts'
import type { Problem } from './problem.ts'
import type { Job, Test } from './schema.ts'
import { say } from '../words/say.ts'

export interface TestVerdict {
  /** The limit chosen, where it may be for the test: what is drawn beside the figure. */
  limit?: Limit
  verdict?: Verdict
  /** Why there is none: the limit chosen is not for the test. */
  withheld?: Withheld
  problems: Problem[]
}

/** What a report gives of each figure. */
type Figures = Record<string, Compared & { unit: string }>

/** What is known of the building. */
type Known = Pick<Job, 'building' | 'units'>

/** The cell that a figure waits for, and the name of both. */
const NEEDS: Record<string, { path: string; cell: string; figure: string }> = {
  'air-changes-50': { path: 'building.volume', cell: say`volume`, figure: 'ACH50' },
  'flow-50-per-enclosure-area': {
    path: 'building.enclosureArea',
    cell: say`enclosure area`,
    figure: say`the flow per enclosure area`,
  },
  'flow-4-per-enclosure-area-without-floor': {
    path: 'building.enclosureAreaWithoutFloor',
    cell: say`enclosure area without the lowest floor`,
    figure: say`the flow per enclosure area`,
  },
  'flow-50-per-floor-area': { path: 'building.floorArea', cell: say`floor area`, figure: say`the flow per floor area` },
  'flow-10-per-enclosure-area': {
    path: 'building.enclosureArea',
    cell: say`enclosure area`,
    figure: say`the flow per enclosure area`,
  },
  'normalized-leakage-area': { path: 'building.enclosureArea', cell: say`enclosure area`, figure: 'NLA' },
  'specific-leakage-area': { path: 'building.floorArea', cell: say`floor area`, figure: 'SLA' },
  'duct-qn': { path: 'building.floorArea', cell: say`floor area`, figure: 'Qn' },
  'flow-75-per-enclosure-area': {
    path: 'building.enclosureArea',
    cell: say`enclosure area`,
    figure: say`the flow per enclosure area`,
  },
  'duct-flow-25-per-floor-area': {
    path: 'building.floorArea',
    cell: say`floor area`,
    figure: say`the flow per floor area`,
  },
  'duct-share-of-air-handler': {
    path: 'airHandlerFlow',
    cell: say`air handler flow`,
    figure: say`the share of the air handler’s flow`,
  },
}

/** What a test is, for the limits: of the cells that are not typed nothing is known. */
export function scopeOf({ building, units }: Known, test: Test, mean = false): Scope {
  const { subject, procedure, direction, ductLeakage } = test.sheet
  const unit = unitAt('building.volume', units)
  const { value: volume } = cellValue(building.volume, 'building.volume', unit, { marks: marksIn(units) })
  return {
    subject,
    procedure,
    directions: mean ? 'mean' : direction,
    climateZone: building.climateZone,
    ...(subject === 'ducts' && { leakage: ductLeakage }),
    ...(test.stage && { stage: test.stage }),
    ...(volume !== undefined && { size: convert(volume, unit, 'm3') }),
    ...(building.volumeBasis && { volume: building.volumeBasis }),
  }
}

/**
 * The published limits that a picker offers for a test, those that fit it best first. Where a house is measured in feet the
 * codes that are written in metres are not meant, and the other way round, unless there is no other limit.
 */
export function limitsOf(job: Known, test: Test): Limit[] {
  const fits = limitsFor(scopeOf(job, test))
  const foreign = test.units.length === 'ft' ? /m2/ : /ft2/
  const near = fits.filter(({ unit }) => !foreign.test(unit))
  return near.length > 0 ? near : fits
}

/** The limit chosen for a test: a published one, the user's own, or none. */
export function limitOf(test: Test): { limit?: Limit; problems: Problem[] } {
  if (test.limit === '') return { problems: [] }
  if (test.limit === 'own') {
    const unit = ownLimitUnit(test)
    const { value, problem } = cellValue(test.ownLimit, 'ownLimit', unit, { marks: marksIn(test.units) })
    if (value !== undefined) {
      const limit = ownLimit(ownLimitFigure(test), value, unit)
      const origin = test.ownLimitOrigin
      const name = origin ? say`Own limit: ${origin}` : limit.title
      const { comparison = limit.comparison, ...terms } = test.ownLimitTerms ?? {}
      return { limit: { ...limit, ...terms, comparison, title: name, edition: name }, problems: [] }
    }
    const message = say`Own limit: nothing typed. Type the number that the permit or program gives, or choose another limit.`
    return { problems: [problem ?? { path: 'ownLimit', code: 'missing', severity: 'missing', message }] }
  }
  const limit = publishedLimit(test.limit)
  if (limit?.subject === test.sheet.subject) return { limit, problems: [] }
  const name = test.limit.slice(0, 60)
  const message =
    limit === undefined
      ? say`Limit: “${name}” is not among the limits known here. Choose another.`
      : test.sheet.subject === 'ducts'
        ? say`Limit: “${name}” is no limit of ducts. Choose another.`
        : say`Limit: “${name}” is no limit of an enclosure. Choose another.`
  return { problems: [{ path: 'limit', code: 'unknown-limit', severity: 'bad', message }] }
}

/**
 * Compares the figure that the test's limit is set on, if the limit is for such a test and building. Without a limit there is
 * no verdict and no problem.
 *
 * @param mean whether the figures are the mean of both directions
 */
export function verdictOf(job: Known, test: Test, figures: Figures | undefined, mean = false): TestVerdict {
  const { limit, problems } = limitOf(test)
  if (limit === undefined || figures === undefined) return { ...(limit === undefined ? {} : { limit }), problems }
  const figure = Object.hasOwn(figures, limit.figure) ? figures[limit.figure] : undefined
  const found = verdict(figure ?? { value: 0 }, limit, scopeOf(job, test, mean))
  if ('withheld' in found) return { withheld: found, problems }
  if (figure !== undefined) return { limit, verdict: found, problems }
  const needs = NEEDS[limit.figure]
  if (needs === undefined) return { limit, problems }
  const name = `${needs.cell.charAt(0).toUpperCase()}${needs.cell.slice(1)}`
  const message = say`${name}: ${needs.figure} needs it for the verdict. Type the ${needs.cell}, or choose a limit on another figure.`
  const beside = say`${needs.figure} needs it for the verdict.`
  return { limit, problems: [...problems, { path: needs.path, code: 'missing', severity: 'missing', message, beside }] }
}
