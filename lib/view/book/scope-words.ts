import { zoneWords } from '../../limits/index.ts'
import type { LimitTerms } from '../../limits/schema.ts'
import { asRead } from '../../results/in-locale.ts'
import { say, shown } from '../../words/say.ts'

/** What a limit is written for, in a few words: zones, kind of building or path of the code, stage, leakage. */
export function scopeWords({ climateZones, condition, leakage, stages }: LimitTerms): string {
  const kind = leakage && (leakage === 'total' ? say`total leakage` : say`leakage to outside`)
  // A condition often says the stage, and the kind of leakage, in better words.
  const stage = condition ? undefined : stages?.map(shown).join(', ')
  const known = condition?.includes(kind ?? '') ? undefined : kind
  return [climateZones && zoneWords(climateZones), condition && asRead(condition), stage, known]
    .filter(Boolean)
    .join('; ')
}
