/** Switches the units of typed cells and back, so that nothing typed is lost. */
import { convert } from '../units/convert.ts'
import { marksIn } from '../units/comma.ts'
import type { Marks } from '../units/marks.ts'
import { readNumber } from '../units/read.ts'
import { write } from '../units/write.ts'
import { typedDecimals, unitAt } from './cells.ts'
import { marksAt } from './read.ts'
import { readCell } from './read-cell.ts'
import { ownLimitUnit } from './own-limit.ts'
import type { Building, Job, Test, TypedUnits } from './schema.ts'

type Converted = Job['converted']

/** Usual sets of units; the flow unit is free to choose beside either. */
export const unitSets = {
  IP: { flow: 'cfm', temperature: 'degF', length: 'ft' },
  SI: { flow: 'm3/h', temperature: 'degC', length: 'm' },
} as const satisfies Record<string, TypedUnits>

const BUILDING_CELLS = [
  'floorArea',
  'volume',
  'enclosureArea',
  'enclosureAreaWithoutFloor',
  'height',
  'elevation',
] as const satisfies (keyof Building)[]
const SHEET_CELLS = ['indoor', 'outdoor', 'airHandlerFlow', 'servedArea'] as const
const MOST_DECIMALS = 12

/** Other units; that a decimal comma may have been typed stays. */
const inUnits = ({ decimal }: TypedUnits, units: TypedUnits): TypedUnits => ({ ...units, ...(decimal && { decimal }) })

const withComma = (units: TypedUnits): TypedUnits => (units.decimal ? units : { ...units, decimal: 'comma' })

/** A job that a person has typed in whose language writes a decimal comma. */
export const typedWithComma = (job: Job): Job => ({
  ...job,
  units: withComma(job.units),
  tests: job.tests.map((test) => ({ ...test, units: withComma(test.units) })),
})

/** A job and all its tests in other units. */
export function switchUnits(job: Job, units: TypedUnits): Job {
  const switched = new Switch(job.converted, () => marksIn(job.units))
  const building = { ...job.building }
  for (const field of BUILDING_CELLS) {
    const path = `building.${field}`
    const typed = building[field]
    if (typed === undefined) continue
    building[field] = switched.cell(path, typed, unitAt(path, job.units), unitAt(path, units))
  }
  return {
    ...job,
    units: inUnits(job.units, units),
    building,
    tests: job.tests.map((test) => switchTestUnits(test, units)),
    converted: switched.converted,
  }
}

/** A test in other units; the building keeps the units of its job. */
export function switchTestUnits(test: Test, units: TypedUnits): Test {
  const switched = new Switch(test.converted, marksAt(test.sheet, test.units))
  const to = (path: string, text: string) => switched.cell(path, text, unitAt(path, test.units), unitAt(path, units))
  const sheet = { ...test.sheet }
  for (const field of SHEET_CELLS) {
    const typed = sheet[field]
    if (typed !== undefined) sheet[field] = to(field, typed)
  }
  sheet.points = sheet.points.map((point, at) => ({
    ...point,
    flow: to(`points.${at}.flow`, point.flow),
    ...(point.fans && {
      fans: point.fans.map((fan, of) => ({ ...fan, flow: to(`points.${at}.fans.${of}.flow`, fan.flow) })),
    }),
  }))
  if (sheet.fans) {
    sheet.fans = sheet.fans.map((fan, of) => ({ ...fan, temperature: to(`fans.${of}.temperature`, fan.temperature) }))
  }
  const { fieldCheck } = sheet
  if (fieldCheck) {
    const [area, flow] = [to('fieldCheck.area', fieldCheck.area), to('fieldCheck.flow', fieldCheck.flow)]
    sheet.fieldCheck = { ...fieldCheck, area, flow }
  }
  const zones = test.zones?.map((zone, at) => ({
    ...zone,
    closed: to(`zones.${at}.closed`, zone.closed),
    opened: to(`zones.${at}.opened`, zone.opened),
  }))
  return {
    ...test,
    ...(zones && { zones }),
    units: inUnits(test.units, units),
    sheet,
    instrumentFigure: to('instrumentFigure', test.instrumentFigure),
    ownLimit: switched.cell('ownLimit', test.ownLimit, ownLimitUnit(test), ownLimitUnit({ ...test, units })),
    converted: switched.converted,
  }
}

/** One switch of one set of cells; gathers what to remember. */
class Switch {
  readonly converted: Converted = {}
  readonly #before: Converted
  /** What was remembered of rows, by the text shown: rows may have moved since. */
  readonly #rows = new Map<string, Converted[string]>()

  readonly #marks: (path: string) => Marks

  constructor(before: Converted, marks: (path: string) => Marks) {
    this.#before = before
    this.#marks = marks
    for (const [path, memory] of Object.entries(before)) {
      if (path.startsWith('points.')) this.#rows.set(memory.shown, memory)
    }
  }

  /** What was typed where `text` is shown now, unless it was edited since. */
  #typed(path: string, text: string): Converted[string] | undefined {
    const memory = Object.hasOwn(this.#before, path) ? this.#before[path] : undefined
    if (memory?.shown === text) return memory
    return path.startsWith('points.') ? this.#rows.get(text) : undefined
  }

  /** The text of a cell in unit `to`. */
  cell(path: string, text: string, from: string, to: string): string {
    const kept = this.#typed(path, text)
    if (from === to) {
      if (kept) this.converted[path] = kept
      return text
    }
    const typed = kept ?? { text, unit: from }
    if (typed.unit === to) return typed.text
    const shown = inOtherUnit(typed.text, typed.unit, to, this.#marks(path))
    if (shown === undefined) return text
    this.converted[path] = { text: typed.text, unit: typed.unit, shown }
    return shown
  }
}

/**
 * A typed number in another unit, with enough decimals that going back lands within half a unit of the last typed digit.
 * Nothing for text that is no number, or that names its own unit.
 *
 * @example inOtherUnit('15,810', 'ft3', 'm3') // '447.69'
 */
export function inOtherUnit(text: string, from: string, to: string, marks?: Marks): string | undefined {
  const reading = readCell(text, from, marks)
  if ('fault' in reading || reading.own) return undefined
  const digits = typedDecimals(text, reading.value)
  const step = Math.abs(convert(1, from, to) - convert(0, from, to))
  // A last digit worth no more than the typed one's keeps the error within half of it.
  const needed = digits === undefined ? MOST_DECIMALS : Math.ceil(digits - Math.log10(step) - 1e-9)
  const value = convert(reading.value, from, to)
  if (Math.abs(value) >= 1e15) return undefined
  const decimals = Math.min(Math.max(needed, 0), 2 * MOST_DECIMALS)
  const plainly = write(value, { decimals })
  // Three places may be read as thousands where a decimal comma is written: one more leaves no doubt.
  const written = readNumber(plainly, marks) === Number(plainly) ? plainly : write(value, { decimals: decimals + 1 })
  const plain = digits === undefined ? written.replace(/\.?0+$/, '') : written
  const minus = /^\s*[−–]/.test(text) ? plain.replace('-', '−') : plain
  return /,\d*\s*$/.test(text) && !text.includes('.') && (digits ?? 0) > 0 ? minus.replace('.', ',') : minus
}
