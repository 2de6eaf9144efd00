/** The limit of a user's own that a test may be compared with. */
import type { Test, TypedUnits } from './schema.ts'

/** Figures that an own limit can be set for; the first of each is taken while none was chosen. */
export const ownLimitFigures = {
  enclosure: ['air-changes-50', 'flow-50', 'flow-50-per-enclosure-area', 'flow-75-per-enclosure-area'],
  ducts: ['duct-flow-25-per-floor-area', 'duct-flow-25', 'duct-share-of-air-handler'],
} as const

/** The figure that the own limit of a test is compared with. */
export function ownLimitFigure(test: Pick<Test, 'sheet' | 'ownLimitFigure'>): string {
  const figures: readonly string[] = ownLimitFigures[test.sheet.subject]
  const chosen = test.ownLimitFigure ?? ''
  return figures.includes(chosen) ? chosen : (figures[0] ?? '')
}

/** The unit that the own limit of a test is typed in. */
export function ownLimitUnit(test: Pick<Test, 'sheet' | 'ownLimitFigure' | 'units'>): string {
  const figure = ownLimitFigure(test)
  if (figure === 'air-changes-50') return '1/h'
  if (figure === 'duct-share-of-air-handler') return '%'
  if (!figure.includes('-per-')) return test.units.flow
  return perArea(test.units, figure.startsWith('duct-'))
}

function perArea({ flow, length }: TypedUnits, ducts: boolean): string {
  if (length === 'ft') return ducts ? 'cfm/100ft2' : 'cfm/ft2'
  return flow === 'L/s' ? 'L/(s.m2)' : 'm3/(h.m2)'
}
