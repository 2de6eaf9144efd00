/** The typed cells that hold a number: what each is called, what it measures, and which numbers it can take. */
import { convert } from '../units/convert.ts'
import { readNumber } from '../units/read.ts'
import { symbol } from '../units/symbol.ts'
import { write } from '../units/write.ts'
import type { Problem } from './problem.ts'
import type { TypedUnits } from './schema.ts'

type Dimension =
  | 'flow'
  | 'temperature'
  | 'length'
  | 'area'
  | 'opening'
  | 'volume'
  | 'pressure'
  | 'percent'
  | 'ratio'
  | 'density'

export interface Cell {
  name: string
  dimension: Dimension
  /** Lowest and highest number it takes, in the base unit of its dimension; `above`: more than nothing. */
  above?: 0
  low?: number
  high: number
  whole?: boolean
  /** Zero is no reading of it, though both signs are. */
  nonzero?: boolean
  /** Said when the number is outside, before the remedy: `0 is not a flow`. */
  not: string
}

const flow = { dimension: 'flow', above: 0, high: 1e7, not: 'a flow that was measured' } as const
const percent = { dimension: 'percent', low: 0, high: 50, not: 'an uncertainty in percent' } as const
const air = { dimension: 'temperature', low: -60, high: 60, not: 'the temperature of air' } as const
const zeroFlow = { dimension: 'pressure', low: -1000, high: 1000, not: 'a baseline pressure' } as const

const zonePressure = {
  dimension: 'pressure',
  low: -1000,
  high: 1000,
  nonzero: true,
  not: 'a pressure across house or zone',
} as const

/** By path; an index in a path stands as `*`. */
const cells: Record<string, Cell> = {
  'points.*.pressure': {
    name: 'pressure',
    dimension: 'pressure',
    low: -1000,
    high: 1000,
    nonzero: true,
    not: 'a test pressure',
  },
  'points.*.flow': { name: 'flow', ...flow },
  'points.*.devicePressure': {
    name: 'device pressure',
    dimension: 'pressure',
    low: -10_000,
    high: 10_000,
    nonzero: true,
    not: 'a device pressure',
  },
  baselineBefore: { name: 'Baseline before', ...zeroFlow },
  baselineAfter: { name: 'Baseline after', ...zeroFlow },
  indoor: { name: 'Indoor temperature', ...air },
  outdoor: { name: 'Outdoor temperature', ...air },
  barometer: { name: 'Barometer', dimension: 'pressure', low: 30_000, high: 110_000, not: 'a barometer reading' },
  exponent: { name: 'Exponent n', dimension: 'ratio', low: 0.5, high: 1, not: 'an exponent of leakage' },
  exponentUncertainty: {
    name: 'Exponent uncertainty',
    dimension: 'ratio',
    low: 0,
    high: 0.25,
    not: 'the uncertainty of an exponent',
  },
  pressurePercent: { name: 'Pressure uncertainty', ...percent },
  pressureFloor: {
    name: 'Pressure uncertainty, floor',
    dimension: 'pressure',
    low: 0,
    high: 50,
    not: 'a floor of uncertainty',
  },
  flowPercent: { name: 'Flow uncertainty', ...percent },
  airHandlerFlow: { name: 'Air handler flow', ...flow, not: 'a flow' },
  'fieldCheck.area': { name: 'Known hole, area', dimension: 'opening', above: 0, high: 1e5, not: 'the area of a hole' },
  'fieldCheck.pressure': {
    name: 'Known hole, pressure across it',
    dimension: 'pressure',
    low: -1000,
    high: 1000,
    nonzero: true,
    not: 'a pressure across a hole',
  },
  'fieldCheck.flow': { name: 'Known hole, flow measured through it', ...flow },
  'fieldCheck.discharge': {
    name: 'Known hole, discharge coefficient',
    dimension: 'ratio',
    low: 0.3,
    high: 1,
    not: 'a discharge coefficient',
  },
  'zones.*.house': { name: 'house to outdoors', ...zonePressure },
  'zones.*.houseZone': { name: 'house to zone', ...zonePressure },
  'zones.*.zoneOutdoors': { name: 'zone to outdoors', ...zonePressure },
  'zones.*.exponent': { name: 'exponent n', dimension: 'ratio', low: 0.5, high: 1, not: 'an exponent of leakage' },
  'zones.*.closed': { name: 'flow with the zone closed', ...flow },
  'zones.*.opened': { name: 'flow with the zone opened', ...flow },
  instrumentFigure: { name: 'Instrument’s own figure', ...flow, not: 'a flow' },
  ownLimit: { name: 'Own limit', dimension: 'ratio', above: 0, high: 1e6, not: 'a limit' },
  'building.floorArea': { name: 'Floor area', dimension: 'area', above: 0, high: 1e7, not: 'the area of a floor' },
  'building.volume': { name: 'Volume', dimension: 'volume', above: 0, high: 1e7, not: 'the volume of a house' },
  'building.enclosureArea': {
    name: 'Enclosure area',
    dimension: 'area',
    above: 0,
    high: 1e7,
    not: 'the area of an enclosure',
  },
  'building.height': { name: 'Height', dimension: 'length', above: 0, high: 1000, not: 'the height of a building' },
  'building.bedrooms': {
    name: 'Bedrooms',
    dimension: 'ratio',
    low: 0,
    high: 1000,
    whole: true,
    not: 'a number of bedrooms',
  },
  'building.stories': { name: 'Stories', dimension: 'ratio', above: 0, high: 200, not: 'a number of stories' },
  'building.volumePercent': { name: 'Volume uncertainty', ...percent },
  'building.weatherShieldingFactor': {
    name: 'Weather and shielding factor',
    dimension: 'ratio',
    low: 0.01,
    high: 2,
    not: 'a weather and shielding factor',
  },
  'building.elevation': {
    name: 'Elevation',
    dimension: 'length',
    low: -450,
    high: 8900,
    not: 'the elevation of a site',
  },
  'device.calibrationDensity': {
    name: 'Device, calibration density',
    dimension: 'density',
    low: 0.5,
    high: 2,
    not: 'the density of air',
  },
  'device.ranges.*.coefficient': { name: 'coefficient', dimension: 'flow', above: 0, high: 1e5, not: 'a coefficient' },
  'device.ranges.*.exponent': {
    name: 'exponent',
    dimension: 'ratio',
    low: 0.1,
    high: 2,
    not: 'the exponent of a range',
  },
  'device.ranges.*.minPressure': {
    name: 'lowest pressure',
    dimension: 'pressure',
    low: 0,
    high: 10_000,
    not: 'a device pressure',
  },
  'device.ranges.*.maxPressure': {
    name: 'highest pressure',
    dimension: 'pressure',
    above: 0,
    high: 10_000,
    not: 'a device pressure',
  },
}

const BASE: Record<Dimension, string> = {
  flow: 'm3/h',
  temperature: 'degC',
  length: 'm',
  area: 'm2',
  opening: 'cm2',
  volume: 'm3',
  pressure: 'Pa',
  percent: '%',
  ratio: '1',
  density: 'kg/m3',
}

/** A path with its indexes as `*`. */
const general = (path: string) => path.replaceAll(/\.\d+(?=\.)/g, '.*')

/** The cell at a path of the job layer, if it holds a number. */
export const cellAt = (path: string): Cell | undefined => cells[general(path)]

/** Names of the cells that hold no number. */
const others: Record<string, string> = {
  'points.*.range': 'range',
  points: 'Readings',
  device: 'Device',
  limit: 'Limit',
}

/** What a person calls the cell at a path: `Point 3, flow`. `range` names the range that a path of a device points at. */
export function nameOf(path: string, range = ''): string {
  const name = cellAt(path)?.name ?? others[general(path)] ?? path
  const point = /^points\.(\d+)/.exec(path)
  if (point) return name === path ? `Point ${Number(point[1]) + 1}` : `Point ${Number(point[1]) + 1}, ${name}`
  const zone = /^zones\.(\d+)/.exec(path)
  if (zone) return `Zone ${Number(zone[1]) + 1}, ${name}`
  const at = /^device\.ranges\.(\d+)/.exec(path)
  return at ? `Range ${range || Number(at[1]) + 1}, ${name}` : name
}

/** The unit a cell is typed in when nothing else stands behind its number. */
export function unitOf(dimension: Dimension, units: TypedUnits): string {
  if (dimension === 'flow') return units.flow
  if (dimension === 'temperature') return units.temperature
  if (dimension === 'length') return units.length
  if (dimension === 'opening') return units.length === 'ft' ? 'in2' : 'cm2'
  if (dimension === 'area') return `${units.length}2`
  return dimension === 'volume' ? `${units.length}3` : BASE[dimension]
}

/** Spellings of units that stand behind a number, without spaces and full stops, in lower case. */
const SPELLINGS: Record<string, string> = {
  pa: 'Pa',
  hpa: 'hPa',
  mbar: 'hPa',
  inh2o: 'inH2O',
  inwc: 'inH2O',
  inhg: 'inHg',
  cfm: 'cfm',
  'ft3/min': 'cfm',
  'm3/h': 'm3/h',
  cmh: 'm3/h',
  'l/s': 'L/s',
  f: 'degF',
  '°f': 'degF',
  degf: 'degF',
  c: 'degC',
  '°c': 'degC',
  degc: 'degC',
  ft: 'ft',
  feet: 'ft',
  m: 'm',
  in2: 'in2',
  sqin: 'in2',
  cm2: 'cm2',
  sqcm: 'cm2',
  ft2: 'ft2',
  sqft: 'ft2',
  sf: 'ft2',
  m2: 'm2',
  sqm: 'm2',
  ft3: 'ft3',
  cuft: 'ft3',
  cf: 'ft3',
  m3: 'm3',
  '%': '%',
  'kg/m3': 'kg/m3',
}

const NUMBER_THEN_UNIT =
  /^([-+−–]?\s?[\d.,'’\s\u00a0\u2009\u202f]*\d[.,]?)\s*([^\d\s.,](?:[^\d]*|[^\d]*[23](?:[^\d]*|\/\D+)))$/
const LONGEST = 60
/** Less than this is no quantity that a tester meets. */
const NOTHING = 1e-6

export type Reading =
  | { value: number; unit: string; own: boolean }
  | { fault: 'empty' | 'long' | 'text' | 'unit'; unit?: string }

/**
 * The number in a cell's text and its unit: the one written behind it (`own`), else the cell's.
 *
 * @example readCell('790 cfm', 'm3/h') // { value: 790, unit: 'cfm', own: true }
 */
export function readCell(text: string, unit: string): Reading {
  if (text.length > LONGEST) return text.trim() === '' ? { fault: 'empty' } : { fault: 'long' }
  const trimmed = text.trim()
  if (trimmed === '') return { fault: 'empty' }
  const plain = readNumber(trimmed)
  if (typeof plain === 'number') return { value: plain, unit, own: false }
  const [, number = '', behind = ''] = NUMBER_THEN_UNIT.exec(trimmed) ?? []
  const value = readNumber(number)
  if (typeof value !== 'number') return { fault: 'text' }
  const spelling = behind
    .toLowerCase()
    .replaceAll(/[\s.^]/g, '')
    .replaceAll('²', '2')
    .replaceAll('³', '3')
  const found = Object.hasOwn(SPELLINGS, spelling) ? SPELLINGS[spelling] : undefined
  return found === undefined ? { fault: 'unit', unit: behind } : { value, unit: found, own: true }
}

export const quote = (text: string): string => `“${text.length > 24 ? `${text.slice(0, 24)}…` : text}”`

/** A number of ours in a sentence: no more digits than it takes, thousands parted. */
const say = (value: number, unit: string) =>
  `${write(Number(value.toPrecision(3)), { grouping: ',' })} ${symbol(unit)}`.trim()

/** What to do about a cell that is not needed for every figure, unless a caller says better. */
const OR_EMPTY = 'or empty the cell'

/** What a cell's text stands for in `unit`, or the problem with it, or neither when it is empty. */
export function cellValue(
  text: string,
  path: string,
  unit: string,
  { range = '', remedy = OR_EMPTY }: { range?: string; remedy?: string } = {},
): { value?: number; problem?: Problem } {
  const cell = cellAt(path)
  if (cell === undefined) throw new RangeError(`${path} is not a cell that holds a number.`)
  const name = nameOf(path, range)
  const bad = (code: string, message: string) => ({
    problem: { path, code, severity: 'bad' as const, message: `${name}: ${message}` },
  })
  const reading = readCell(text, unit)
  if ('fault' in reading) {
    if (reading.fault === 'empty') return {}
    if (reading.fault === 'long') {
      return bad(
        'too-long',
        `${text.length.toLocaleString('en-US')} characters are too long for a number. Type one number, ${remedy}.`,
      )
    }
    if (reading.fault === 'unit') {
      return bad(
        'unknown-unit',
        `${quote(reading.unit ?? '')} is not a unit known here. Type the number in ${symbol(unit) || 'plain digits'}, ${remedy}.`,
      )
    }
    return bad(
      'not-a-number',
      `${quote(text.trim())} is not a number. Type digits, for example 433 or 1,020.5, ${remedy}.`,
    )
  }
  const base = BASE[cell.dimension]
  const value = inUnit(reading.value, reading.unit, unit)
  if (value === undefined) {
    return bad(
      'wrong-unit',
      `${symbol(reading.unit)} does not measure this. Type the number in ${symbol(unit) || 'plain digits'}, ${remedy}.`,
    )
  }
  const measured = inUnit(value, unit, base) ?? value
  const least = cell.above === undefined ? (cell.low ?? -Infinity) : cell.above + NOTHING
  if (
    measured >= least &&
    !(cell.nonzero === true && Math.abs(measured) < NOTHING) &&
    measured <= cell.high &&
    !(cell.whole === true && !Number.isInteger(value))
  )
    return { value }
  return bad('out-of-range', `${text.trim()} is not ${cell.not}. Type ${allowed(cell, unit, measured)}, ${remedy}.`)
}

/** A value in another unit; nothing when the two measure different things. */
function inUnit(value: number, from: string, to: string): number | undefined {
  try {
    return convert(value, from, to)
  } catch {
    return undefined
  }
}

/** What would do in place of `measured`: only the side that it is on. */
function allowed(cell: Cell, unit: string, measured: number): string {
  const to = (value: number) => say(inUnit(value, BASE[cell.dimension], unit) ?? value, unit)
  const kind = cell.whole === true ? 'a whole number' : 'a number'
  if (cell.nonzero === true && Math.abs(measured) < NOTHING) return 'what was read, other than 0'
  if (cell.above !== undefined) return measured > cell.high ? `${kind} up to ${to(cell.high)}` : `${kind} above 0`
  return `${kind} from ${to(cell.low ?? 0)} to ${to(cell.high)}`
}

/** How many decimals a number was typed with; nothing when the text does not show it (an exponent). */
export function typedDecimals(text: string, value: number): number | undefined {
  if (/e/i.test(text)) return undefined
  const digits = text.replaceAll(/\D/g, '')
  if (value === 0) return Math.max(0, digits.length - 1)
  for (let decimals = 0; decimals <= digits.length; decimals++) {
    if (Math.abs(Math.abs(value) - Number(`${digits}e-${decimals}`)) <= Math.abs(value) * 1e-12) return decimals
  }
  return undefined
}
