import type { Test } from '../../job/schema.ts'
import { temperatureWords } from '../../results/unit-words.ts'
import { say, shown } from '../../words/say.ts'

export const subjectWords = { enclosure: say`Enclosure`, ducts: say`Ducts` } as const

export const procedureWords = {
  'one-point': say`one-point`,
  'two-point': say`two-point`,
  'astm-e779': 'ASTM E779',
  'iso-9972': 'ISO 9972',
  'astm-e3158': 'ASTM E3158',
} as const

/** How the typed flows are meant, where they stand. */
export const flowBasisWords = { indicated: say`as shown`, actual: say`actual flow` } as const

/** The set-up of a test in a line: `Enclosure, one-point, depressurize, 68 °F in, 41 °F out`. */
export function setupSummary({ sheet, units }: Pick<Test, 'sheet' | 'units'>): string {
  const degrees = temperatureWords[units.temperature]
  const parts = [
    subjectWords[sheet.subject],
    sheet.subject === 'ducts' && (sheet.ductLeakage === 'total' ? say`total leakage` : say`leakage to outside`),
    procedureWords[sheet.procedure],
    shown(sheet.direction),
    sheet.indoor.trim() && say`${sheet.indoor.trim()} ${degrees} in`,
    sheet.outdoor.trim() && say`${sheet.outdoor.trim()} ${degrees} out`,
  ]
  return parts.filter(Boolean).join(', ')
}
