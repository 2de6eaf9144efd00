import type { Device } from '../../job/schema.ts'
import { dayAndYear } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** Until when a device's calibration holds, in words. */
export function calibration(
  { calibrated, intervalMonths }: Pick<Device, 'calibrated' | 'intervalMonths'>,
  now: Date = new Date(),
): { words: string; overdue: boolean } {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(calibrated)
  if (!parts) return { words: say`no calibration date`, overdue: false }
  const [year = 0, month = 1, day = 1] = parts.slice(1).map(Number)
  const on = dayAndYear(new Date(year, month - 1, day).toISOString())
  const months = Number(intervalMonths)
  if (!Number.isFinite(months) || months <= 0) return { words: say`calibrated ${on}`, overdue: false }
  // The last day of a shorter month stands in for a day that it does not have.
  const length = new Date(year, month + months, 0).getDate()
  const due = new Date(year, month - 1 + months, Math.min(day, length), 23, 59, 59)
  const until = dayAndYear(due.toISOString())
  return now > due
    ? { words: say`calibration ran out ${until}: have it calibrated, or say so in the report`, overdue: true }
    : { words: say`calibrated ${on}, next by ${until}`, overdue: false }
}
