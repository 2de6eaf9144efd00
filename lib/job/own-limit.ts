/** The limit of a user's own that a test may be compared with. */
import type { Test, TypedUnits } from './schema.ts'

/** Figures that an own limit can be set for, the usual ones first; the first of each is taken while none was chosen. */
export const ownLimitFigures = {
  enclosure: [
    'air-changes-50',
    'flow-50',
    'flow-50-per-enclosure-area',
    'flow-75-per-enclosure-area',
    'flow-50-per-floor-area',
    'flow-4-per-enclosure-area-without-floor',
    'flow-10-per-enclosure-area',
    'effective-leakage-area',
    'equivalent-leakage-area',
    'specific-leakage-area',
    'normalized-leakage-area',
    'flow-75',
    'flow-25',
    'flow-10',
    'flow-4',
  ],
  ducts: ['duct-flow-25-per-floor-area', 'duct-flow-25', 'duct-share-of-air-handler', 'duct-qn'],
} as const

/** The figure that the own limit of a test is compared with. */
export function ownLimitFigure(test: Pick<Test, 'sheet' | 'ownLimitFigure'>): string {
  const figures: readonly string[] = ownLimitFigures[test.sheet.subject]
  const chosen = test.ownLimitFigure ?? ''
  return figures.includes(chosen) ? chosen : (figures[0] ?? '')
}

/** The unit that the own limit of a test is typed in: that of the figure. */
export function ownLimitUnit(test: Pick<Test, 'sheet' | 'ownLimitFigure' | 'units'>): string {
  const figure = ownLimitFigure(test)
  const feet = test.units.length === 'ft'
  switch (figure) {
    case 'air-changes-50':
      return '1/h'
    case 'duct-share-of-air-handler':
      return '%'
    case 'duct-qn':
      return 'cfm/ft2'
    case 'specific-leakage-area':
      return '1'
    case 'normalized-leakage-area':
      return feet ? 'in2/100ft2' : 'cm2/m2'
    case 'effective-leakage-area':
    case 'equivalent-leakage-area':
      return feet ? 'in2' : 'cm2'
    case 'flow-50-per-enclosure-area':
    case 'flow-75-per-enclosure-area':
    case 'flow-50-per-floor-area':
    case 'flow-4-per-enclosure-area-without-floor':
    case 'flow-10-per-enclosure-area':
    case 'duct-flow-25-per-floor-area':
      return perArea(test.units, test.sheet.subject === 'ducts')
    default:
      return test.units.flow
  }
}

function perArea({ flow, length }: TypedUnits, ducts: boolean): string {
  if (length === 'ft') return ducts ? 'cfm/100ft2' : 'cfm/ft2'
  return flow === 'L/s' ? 'L/(s.m2)' : 'm3/(h.m2)'
}
