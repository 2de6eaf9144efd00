/** Which limit a test is compared with, and what comes of it. */
import { type Limit, limitsFor, ownLimit, publishedLimit, type Verdict, verdict } from '../limits/index.ts'
import { cellValue } from './cells.ts'
import { ownLimitFigure, ownLimitUnit } from './own-limit.ts'
import type { Problem } from './problem.ts'
import type { Job, Test } from './schema.ts'
import { say } from '../words/say.ts'

export interface TestVerdict {
  limit?: Limit
  verdict?: Verdict
  problems: Problem[]
}

/** What a report gives of each figure. */
type Figures = Record<string, { value: number; unit: string; low?: number | undefined; high?: number | undefined }>

/** The cell that a figure waits for, and the name of both. */
const NEEDS: Record<string, { path: string; cell: string; figure: string }> = {
  'air-changes-50': { path: 'building.volume', cell: say`volume`, figure: 'ACH50' },
  'flow-50-per-enclosure-area': {
    path: 'building.enclosureArea',
    cell: say`enclosure area`,
    figure: say`the flow per enclosure area`,
  },
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

/** The published limits that a picker offers for a test, those that fit it best first. */
export const limitsOf = (job: Pick<Job, 'building'>, test: Test): Limit[] =>
  limitsFor({
    subject: test.sheet.subject,
    procedure: test.sheet.procedure,
    climateZone: job.building.climateZone,
    leakage: test.sheet.ductLeakage,
    stage: test.stage,
  })

/** The limit chosen for a test: a published one, the user's own, or none. */
export function limitOf(test: Test): { limit?: Limit; problems: Problem[] } {
  if (test.limit === '') return { problems: [] }
  if (test.limit === 'own') {
    const unit = ownLimitUnit(test)
    const { value, problem } = cellValue(test.ownLimit, 'ownLimit', unit)
    if (value !== undefined) {
      const limit = ownLimit(ownLimitFigure(test), value, unit)
      const origin = test.ownLimitOrigin
      return { limit: { ...limit, ...(origin && { edition: say`Own limit: ${origin}` }) }, problems: [] }
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

/** Compares the figure that the test's limit is set on. Without a limit there is no verdict and no problem. */
export function verdictOf(test: Test, figures: Figures | undefined): TestVerdict {
  const { limit, problems } = limitOf(test)
  if (limit === undefined || figures === undefined) return { ...(limit === undefined ? {} : { limit }), problems }
  const figure = Object.hasOwn(figures, limit.figure) ? figures[limit.figure] : undefined
  if (figure !== undefined) return { limit, verdict: verdict(figure, limit), problems }
  const needs = NEEDS[limit.figure]
  if (needs === undefined) return { limit, problems }
  const name = `${needs.cell.charAt(0).toUpperCase()}${needs.cell.slice(1)}`
  const message = say`${name}: ${needs.figure} needs it for the verdict. Type the ${needs.cell}, or choose a limit on another figure.`
  return { limit, problems: [...problems, { path: needs.path, code: 'missing', severity: 'missing', message }] }
}
