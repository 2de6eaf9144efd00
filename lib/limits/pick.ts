import { publishedLimits } from './published.ts'
import type { Limit } from './schema.ts'

type Situation = {
  subject: Limit['subject']
  procedure?: 'one-point' | 'two-point' | 'astm-e779' | 'iso-9972' | undefined
  /** 0 to 8, with or without the moisture letter: 5, '5', '5A'. Text that names no zone is taken as unknown. */
  climateZone?: string | number | undefined
  leakage?: Limit['leakage'] | undefined
  stage?: string | undefined
}

/** The number of a climate zone as people write it: 5, '5A', 'CZ 4C', 'zone 3'. */
export function zoneNumber(text: string | number | undefined): number | undefined {
  const found = /(?:^|[^\d.])([0-8])\s*[a-c]?$/i.exec(String(text ?? '').trim())
  return found ? Number(found[1]) : undefined
}

/** The published limit with this id. */
export const publishedLimit = (id: string): Limit | undefined => publishedLimits.find((limit) => limit.id === id)

/**
 * The published limits that a test can be compared with, in the order of a picker: newest code first, a limit written
 * for the building's zone before one for any zone. After a one-point test those at 75 Pa, which stretch the one reading
 * furthest, come last.
 *
 * @param situation what is known of the test; what is not known filters nothing
 * @example
 * limitsFor({ subject: 'enclosure', climateZone: '5A' })[0]?.id // 'iecc-2024-air-changes-zones-4-5'
 */
export function limitsFor(situation: Situation): Limit[] {
  const zone = zoneNumber(situation.climateZone)
  const { subject, procedure, leakage, stage } = situation
  const fits = publishedLimits.filter(
    (limit) =>
      limit.subject === subject &&
      (zone === undefined || (limit.climateZones?.includes(zone) ?? true)) &&
      (!leakage || !limit.leakage || limit.leakage === leakage) &&
      (!stage || !limit.stages || limit.stages.some((one) => one === stage)),
  )
  const stretched = (limit: Limit) => procedure === 'one-point' && limit.figure.includes('-75-')
  return [...fits.filter((limit) => !stretched(limit)), ...fits.filter(stretched)]
}
