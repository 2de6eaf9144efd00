/** What a limit is written for, held against what a test is. */
import { sideOf } from '../units/same.ts'
import { say } from '../words/say.ts'
import type { Limit } from './schema.ts'
import { zoneNumber } from './zone.ts'

/** What is known of a test; what is absent, or names nothing, is not known. */
export type Scope = {
  subject?: Limit['subject'] | undefined
  /** 0 to 8, with or without the moisture letter: 5, '5', '5A'. Text that names no zone is taken as unknown. */
  climateZone?: string | number | undefined
  leakage?: Limit['leakage'] | undefined
  stage?: string | undefined
  procedure?: 'one-point' | 'two-point' | 'astm-e779' | 'iso-9972' | 'astm-e3158' | undefined
  /** Whether the figure is from one direction, or the mean of both. */
  directions?: 'depressurize' | 'pressurize' | 'mean' | undefined
  /** Which volume air changes are set over. */
  volume?: 'net' | 'gross' | undefined
  /** Air volume of the building, m3. */
  size?: number | undefined
}

/** One thing a limit is written for: what it wants, and what the test is instead; `found` absent: the test does not say. */
type Term = { wants: string; found?: string }

const subjects = { enclosure: say`an enclosure`, ducts: say`ducts` }
const leakages = { total: say`total leakage`, outside: say`leakage to outside` }
const stageWords: Record<string, string> = {
  'rough-in': say`rough-in`,
  'rough-in without air handler': say`rough-in without air handler`,
  final: say`finished work`,
  existing: say`existing ducts or buildings`,
}
const procedureWords: Record<string, string> = {
  'one-point': say`a one-point test`,
  'two-point': say`a two-point test`,
  'astm-e779': 'ASTM E779',
  'iso-9972': 'ISO 9972',
  'astm-e3158': 'ASTM E3158',
}
const volumes = { net: say`the net air volume`, gross: say`the gross volume` }

const either = (words: readonly string[]): string => words.join(say` or `)

/** `zone 3`, `zones 4 and 5`, `zones 3 to 8`, `zones 2, 4, 5` where some between are left out */
export function zoneWords(zones: readonly number[]): string {
  const [first = 0] = zones
  const last = zones.at(-1) ?? first
  if (first === last) return say`zone ${first}`
  if (last - first >= zones.length) return say`zones ${zones.join(', ')}`
  return last === first + 1 ? say`zones ${first} and ${last}` : say`zones ${first} to ${last}`
}

function sizeTerm({ above, most }: NonNullable<Limit['size']>, size: number | undefined): Term | undefined {
  const [low, high] = [above ?? 0, most ?? Infinity]
  if (size !== undefined && sideOf(size, low) > 0 && sideOf(size, high) <= 0) return undefined
  const wants =
    above === undefined ? say`buildings of up to ${high} m³ of air` : say`buildings of more than ${low} m³ of air`
  return size === undefined ? { wants } : { wants, found: say`a building of ${Math.round(size)} m³` }
}

/** What stands against a limit, or is not known, in the order it is said. */
function termsOf(limit: Limit, scope: Scope): Term[] {
  const terms: (Term | undefined)[] = []
  const add = (wants: string, found: string | undefined) =>
    terms.push(found === undefined ? { wants } : { wants, found })
  if (scope.subject !== undefined && scope.subject !== limit.subject)
    add(subjects[limit.subject], subjects[scope.subject])
  if (limit.leakage && scope.leakage !== limit.leakage)
    add(leakages[limit.leakage], scope.leakage && leakages[scope.leakage])
  if (limit.stages && !limit.stages.some((stage) => stage === scope.stage))
    add(
      either(limit.stages.map((stage) => stageWords[stage] ?? stage)),
      scope.stage && (stageWords[scope.stage] ?? scope.stage),
    )
  const zone = zoneNumber(scope.climateZone)
  if (limit.climateZones && (zone === undefined || !limit.climateZones.includes(zone)))
    add(zoneWords(limit.climateZones), zone === undefined ? undefined : say`zone ${zone}`)
  if (limit.procedures && !limit.procedures.some((procedure) => procedure === scope.procedure))
    add(
      either(limit.procedures.map((one) => procedureWords[one] ?? one)),
      scope.procedure && procedureWords[scope.procedure],
    )
  if (limit.directions === 'mean' && scope.directions !== 'mean')
    add(say`the mean of both directions`, scope.directions && say`one direction`)
  if (limit.directions === 'each')
    if (scope.directions === 'mean') add(say`each direction by itself`, say`the mean of both directions`)
    else add(say`both directions, each by itself`, undefined)
  if (limit.volume && scope.volume !== limit.volume) add(volumes[limit.volume], scope.volume && volumes[scope.volume])
  if (limit.size) terms.push(sizeTerm(limit.size, scope.size))
  return terms.filter((term) => term !== undefined)
}

export type Fit = {
  /** Why the limit is not for the test, each as what it wants and what the test is. */
  against: { wants: string; found: string }[]
  /** What the limit is written for and the test does not say. */
  unsaid: string[]
}

/** How a limit fits a test. */
export function fitOf(limit: Limit, scope: Scope): Fit {
  const fit: Fit = { against: [], unsaid: [] }
  for (const { wants, found } of termsOf(limit, scope))
    if (found === undefined) fit.unsaid.push(wants)
    else fit.against.push({ wants, found })
  return fit
}

/** Why a limit is not for a test, in a sentence; nothing when it may be. */
export function whyNot(limit: Limit, scope: Scope): string | undefined {
  const { against } = fitOf(limit, scope)
  if (against.length === 0) return undefined
  const wants = against.map((one) => one.wants).join(', ')
  const found = against.map((one) => one.found).join(', ')
  return say`The limit “${limit.title}” is for ${wants}; this test is of ${found}.`
}
