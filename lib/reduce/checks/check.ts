/** What a check is: one file each in this folder, its name is the check's id. */
import type { Sheet } from '../../sheet/schema.ts'
import type { Readings } from '../flow.ts'
import type { Leak } from '../leak.ts'
import type { CheckResult, FigureValue } from '../report.ts'

export interface CheckContext {
  sheet: Sheet
  readings: Readings
  leak: Leak
  figures: Readonly<Record<string, FigureValue>>
}

export interface Check {
  id: string
  /** A few words, as a heading. */
  name: string
  /** What was found, what was expected and what to do next; nothing when the check has no place on this sheet. */
  run(context: CheckContext): Omit<CheckResult, 'id'> | undefined
}
