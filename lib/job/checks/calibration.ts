/** The device's calibration against the day of the test. */
import type { CheckResult } from '../../reduce/report.ts'
import { dateItem } from '../material-job.ts'
import type { Device, Test } from '../schema.ts'
import { say } from '../../words/say.ts'

const DAY = 86_400_000

/** Whether a cell holds a day. */
export const isDay = (text: string) => dateItem('', '', text)?.kind === 'date'

/** The day `months` after a day; the last of the month when that month is shorter. */
function monthsLater(iso: string, months: number): string {
  const [year = 0, month = 1, day = 1] = iso.split('-').map(Number)
  const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate()
  return new Date(Date.UTC(year, month - 1 + months, Math.min(day, last))).toISOString().slice(0, 10)
}

/** Source: certificate of the device. */
export function calibration(test: Test, device: Device): CheckResult {
  const id = 'calibration'
  const name = device.name.trim() ? `“${device.name.trim()}”` : say`The device`
  const months = /^\d{1,3}$/.test(device.intervalMonths.trim()) ? Number(device.intervalMonths) : 0
  const [calibrated, tested] = [device.calibrated.trim(), test.date.trim()]
  if (!isDay(calibrated) || months === 0) {
    const text = say`${name}: no date and interval of calibration. Type both from its certificate, under devices.`
    return { id, outcome: 'not checked', text }
  }
  if (!isDay(tested))
    return { id, outcome: 'not checked', text: say`Type the date of the test, to compare with the calibration.` }
  const due = monthsLater(calibrated, months)
  const past = Math.round((Date.parse(tested) - Date.parse(due)) / DAY)
  const expected = say`due ${due}`
  if (tested < calibrated) {
    const text = say`${name} was calibrated after this test. Check both dates.`
    return { id, outcome: 'doubtful', text, found: calibrated, expected: say`before ${tested}` }
  }
  if (past <= 0)
    return {
      id,
      outcome: 'good',
      text: say`${name} was within its calibration.`,
      found: say`tested ${tested}`,
      expected,
    }
  const days = past === 1 ? say`1 day` : say`${past} days`
  const text = say`${name} was ${days} past its date. Enter the new certificate under devices, or say why in the notes.`
  return { id, outcome: 'doubtful', text, found: say`${days} past`, expected }
}
