/** Checks of what a sheet does not hold: the device's calibration, the wind, the instrument's own figure. */
import type { CheckResult, Report } from '../reduce/report.ts'
import { labelOf } from '../reduce/figures/index.ts'
import { symbol } from '../units/symbol.ts'
import { write } from '../units/write.ts'
import { cellValue } from './cells.ts'
import { dateItem } from './material-job.ts'
import type { Device, Test } from './schema.ts'

const DAY = 86_400_000

/** Headings of the checks by id. */
export const testCheckNames: Record<string, string> = {
  calibration: 'Device calibration',
  'instrument-figure': 'Instrument’s own figure',
  wind: 'Wind',
}

/** The checks of a test beside those of its sheet. */
export function testChecks(test: Test, devices: Device[], figures: Report['figures']): CheckResult[] {
  const device = devices.find(({ id }) => id === test.sheet.device)
  return [
    ...(device === undefined ? [] : [calibration(test, device)]),
    ...instrumentFigure(test, figures),
    ...(test.sheet.subject === 'enclosure' ? [wind(test)] : []),
  ]
}

const dayOf = (text: string) => dateItem('', '', text)?.kind === 'date'

/** The day `months` after a day; the last of the month when that month is shorter. */
function monthsLater(iso: string, months: number): string {
  const [year = 0, month = 1, day = 1] = iso.split('-').map(Number)
  const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate()
  return new Date(Date.UTC(year, month - 1 + months, Math.min(day, last))).toISOString().slice(0, 10)
}

/** Source: certificate of the device. */
function calibration(test: Test, device: Device): CheckResult {
  const id = 'calibration'
  const name = device.name.trim() || 'The device'
  const months = /^\d{1,3}$/.test(device.intervalMonths.trim()) ? Number(device.intervalMonths) : 0
  const [calibrated, tested] = [device.calibrated.trim(), test.date.trim()]
  if (!dayOf(calibrated) || months === 0) {
    const text = `${name}: no date and interval of calibration. Type both from its certificate, under devices.`
    return { id, outcome: 'not checked', text }
  }
  if (!dayOf(tested))
    return { id, outcome: 'not checked', text: 'Type the date of the test, to compare with the calibration.' }
  const due = monthsLater(calibrated, months)
  const past = Math.round((Date.parse(tested) - Date.parse(due)) / DAY)
  const expected = `due ${due}`
  if (tested < calibrated) {
    const text = `${name} was calibrated after this test. Check both dates.`
    return { id, outcome: 'doubtful', text, found: calibrated, expected: `before ${tested}` }
  }
  if (past <= 0)
    return { id, outcome: 'good', text: `${name} was within its calibration.`, found: `tested ${tested}`, expected }
  const days = past === 1 ? '1 day' : `${past} days`
  const text = `${name} was ${days} past its date. Enter the new certificate under devices, or say why in the notes.`
  return { id, outcome: 'doubtful', text, found: `${days} past`, expected }
}

const AGREES = 0.02

/** Source: two percent of agreement is common practice, no source. */
function instrumentFigure(test: Test, figures: Report['figures']): CheckResult[] {
  const { value } = cellValue(test.instrumentFigure, 'instrumentFigure', test.units.flow)
  const [raw, corrected] =
    test.sheet.subject === 'ducts' ? ['duct-flow-25-as-read', 'duct-flow-25'] : ['flow-50-as-read', 'flow-50']
  const [asRead, standard] = [figures[raw], figures[corrected]]
  if (value === undefined || asRead === undefined || standard === undefined) return []
  const id = 'instrument-figure'
  const off = Math.abs(value / asRead.value - 1)
  const unit = symbol(asRead.unit)
  const say = (number: number) => `${write(number, { decimals: number < 100 ? 1 : 0 })} ${unit}`
  const expected = `${say(asRead.value)} as read`
  const found = `${say(value)}, ${write(100 * off, { decimals: 1 })} % off`
  if (off <= AGREES) {
    return [{ id, outcome: 'good', text: 'The instrument’s own figure agrees with the readings.', found, expected }]
  }
  if (Math.abs(value / standard.value - 1) <= AGREES) {
    const text = `The instrument’s own figure agrees with ${labelOf(corrected, standard.unit)} after the air correction, not with the readings as typed. Check whether the typed flows were corrected already.`
    return [{ id, outcome: 'doubtful', text, found, expected }]
  }
  const text = 'The instrument’s own figure differs from the readings. Check the digits, the range and the baseline.'
  return [{ id, outcome: off > 0.1 ? 'bad' : 'doubtful', text, found, expected }]
}

/** Source: above 6 m/s (Beaufort 3), ASTM E779 and ISO 9972 (from memory). */
function wind(test: Test): CheckResult {
  const id = 'wind'
  if (test.wind === '') return { id, outcome: 'not checked', text: 'Note the wind of the test.' }
  if (test.wind !== 'windy') return { id, outcome: 'good', text: 'Little wind.', found: test.wind }
  const text = 'Wind shakes the readings. Take longer averages and more baselines, or test in calmer weather.'
  return { id, outcome: 'doubtful', text, found: 'windy', expected: 'up to 6 m/s' }
}
