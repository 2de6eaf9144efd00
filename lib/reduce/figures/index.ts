/** Every figure, in the order they are listed. */
import { airChanges50 } from './air-changes-50.ts'
import { correlation } from './correlation.ts'
import { ductFlow25AsRead } from './duct-flow-25-as-read.ts'
import { ductFlow25PerFloorArea } from './duct-flow-25-per-floor-area.ts'
import { ductFlow25 } from './duct-flow-25.ts'
import { ductQn } from './duct-qn.ts'
import { ductShareOfAirHandler } from './duct-share-of-air-handler.ts'
import { effectiveLeakageArea } from './effective-leakage-area.ts'
import { equivalentLeakageArea } from './equivalent-leakage-area.ts'
import { fanRequiredOneWay } from './fan-required-one-way.ts'
import { fanRequired } from './fan-required.ts'
import type { Sheet } from '../../sheet/schema.ts'
import type { Figure } from './figure.ts'
import { flow10PerEnclosureArea } from './flow-10-per-enclosure-area.ts'
import { flow10 } from './flow-10.ts'
import { flow25 } from './flow-25.ts'
import { flow4PerEnclosureAreaWithoutFloor } from './flow-4-per-enclosure-area-without-floor.ts'
import { flow4 } from './flow-4.ts'
import { flow50AsRead } from './flow-50-as-read.ts'
import { flow50PerEnclosureArea } from './flow-50-per-enclosure-area.ts'
import { flow50PerFloorArea } from './flow-50-per-floor-area.ts'
import { flow50 } from './flow-50.ts'
import { flow75PerEnclosureArea } from './flow-75-per-enclosure-area.ts'
import { flow75 } from './flow-75.ts'
import { infiltrationCredit } from './infiltration-credit.ts'
import { leakageCoefficient } from './leakage-coefficient.ts'
import { leakageExponent } from './leakage-exponent.ts'
import { naturalAirChanges } from './natural-air-changes.ts'
import { normalizedLeakageArea } from './normalized-leakage-area.ts'
import { normalizedLeakage } from './normalized-leakage.ts'
import { specificLeakageArea } from './specific-leakage-area.ts'
import { ventilationRequired } from './ventilation-required.ts'
import { shown } from '../../words/say.ts'

export const figures: readonly Figure[] = [
  ductFlow25,
  ductFlow25PerFloorArea,
  ductQn,
  ductShareOfAirHandler,
  flow50,
  airChanges50,
  flow50PerEnclosureArea,
  flow50PerFloorArea,
  flow75PerEnclosureArea,
  flow10PerEnclosureArea,
  flow4PerEnclosureAreaWithoutFloor,
  effectiveLeakageArea,
  equivalentLeakageArea,
  normalizedLeakageArea,
  specificLeakageArea,
  normalizedLeakage,
  leakageExponent,
  leakageCoefficient,
  correlation,
  flow50AsRead,
  ductFlow25AsRead,
  flow75,
  flow25,
  flow10,
  flow4,
  naturalAirChanges,
  infiltrationCredit,
  ventilationRequired,
  fanRequired,
  fanRequiredOneWay,
]

/** A figure by its id. */
export function figureById(id: string): Figure | undefined {
  return figures.find((figure) => figure.id === id)
}

/** What a figure is of; one that tests of both have, such as flow-25, is of the enclosure. */
export const subjectOf = (id: string): Sheet['subject'] => figureById(id)?.subject ?? 'enclosure'

/** The flow that a test is asked for before all else. */
export const usualFlow = (subject: Sheet['subject']): string => (subject === 'ducts' ? ductFlow25 : flow50).id

/**
 * The word of the trade for a figure in a unit.
 *
 * @example labelOf('flow-50', 'cfm') // 'CFM50'
 */
export function labelOf(id: string, unit: string): string {
  const figure = figureById(id)
  return figure?.labels?.[unit] ?? figure?.label ?? id
}

/** The same in the language of the reader, where it is shown and not filled in or kept. */
export const wordOf = (id: string, unit: string): string => shown(labelOf(id, unit))

/**
 * Whether the word of the trade says the unit already.
 *
 * @example saysUnit('flow-50', 'cfm') // true
 */
export const saysUnit = (id: string, unit: string): boolean => figureById(id)?.labels?.[unit] !== undefined

/**
 * How many decimals a figure is usually written with in a unit.
 *
 * @example decimalsOf('air-changes-50', '1/h') // 2
 */
export function decimalsOf(id: string, unit: string): number {
  return figureById(id)?.decimals[unit] ?? 2
}
