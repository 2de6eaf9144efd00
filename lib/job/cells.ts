/** The typed cells that hold a number: what each is called, what it measures, and which numbers it can take. */
import { convert } from '../units/convert.ts'
import type { Marks } from '../units/marks.ts'
import { symbol } from '../units/symbol.ts'
import { write } from '../units/write.ts'
import type { Problem } from './problem.ts'
import { quote, readCell } from './read-cell.ts'
import type { TypedUnits } from './schema.ts'
import { say } from '../words/say.ts'

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

const flow = { dimension: 'flow', above: 0, high: 1e7, not: say`a flow that was measured` } as const
const percent = { dimension: 'percent', low: 0, high: 50, not: say`an uncertainty in percent` } as const
const seconds = { dimension: 'ratio', above: 0, high: 7200, not: say`a time in seconds` } as const
const air = { dimension: 'temperature', low: -60, high: 60, not: say`the temperature of air` } as const
const zeroFlow = { dimension: 'pressure', low: -1000, high: 1000, not: say`a baseline pressure` } as const

const devicePressure = {
  dimension: 'pressure',
  low: -10_000,
  high: 10_000,
  nonzero: true,
  not: say`a device pressure`,
} as const

const zonePressure = {
  dimension: 'pressure',
  low: -1000,
  high: 1000,
  nonzero: true,
  not: say`a pressure across house or zone`,
} as const

/** By path; an index in a path stands as `*`. */
const cells: Record<string, Cell> = {
  'points.*.pressure': {
    name: say`pressure`,
    dimension: 'pressure',
    low: -1000,
    high: 1000,
    nonzero: true,
    not: say`a test pressure`,
  },
  'points.*.flow': { name: say`flow`, ...flow },
  'points.*.devicePressure': { name: say`device pressure`, ...devicePressure },
  'points.*.fans.*.flow': { name: say`flow`, ...flow },
  'points.*.fans.*.devicePressure': { name: say`device pressure`, ...devicePressure },
  'fans.*.temperature': { name: say`temperature`, ...air },
  'fans.*.flowPercent': { name: say`uncertainty of flow`, ...percent },
  baselineBefore: { name: say`Baseline before`, ...zeroFlow },
  baselineAfter: { name: say`Baseline after`, ...zeroFlow },
  indoor: { name: say`Indoor temperature`, ...air },
  outdoor: { name: say`Outdoor temperature`, ...air },
  barometer: { name: say`Barometer`, dimension: 'pressure', low: 30_000, high: 110_000, not: say`a barometer reading` },
  exponent: { name: say`Exponent n`, dimension: 'ratio', low: 0.5, high: 1, not: say`an exponent of leakage` },
  exponentUncertainty: {
    name: say`Exponent uncertainty`,
    dimension: 'ratio',
    low: 0,
    high: 0.25,
    not: say`the uncertainty of an exponent`,
  },
  pressurePercent: { name: say`Pressure uncertainty`, ...percent },
  pressureFloor: {
    name: say`Pressure uncertainty, floor`,
    dimension: 'pressure',
    low: 0,
    high: 50,
    not: say`a floor of uncertainty`,
  },
  flowPercent: { name: say`Flow uncertainty`, ...percent },
  baselineSeconds: { name: say`Averaging time of the baseline`, ...seconds },
  readingSeconds: { name: say`Averaging time of a reading`, ...seconds },
  pressureScatter: {
    name: say`Scatter of a pressure reading`,
    dimension: 'pressure',
    low: 0,
    high: 50,
    not: say`a scatter of readings`,
  },
  airHandlerFlow: { name: say`Air handler flow`, ...flow, not: say`a flow` },
  servedArea: { name: say`Floor area served`, dimension: 'area', above: 0, high: 1e7, not: say`the area of a floor` },
  'fieldCheck.area': {
    name: say`Known hole, area`,
    dimension: 'opening',
    above: 0,
    high: 1e5,
    not: say`the area of a hole`,
  },
  'fieldCheck.pressure': {
    name: say`Known hole, pressure across it`,
    dimension: 'pressure',
    low: -1000,
    high: 1000,
    nonzero: true,
    not: say`a pressure across a hole`,
  },
  'fieldCheck.flow': { name: say`Known hole, flow measured through it`, ...flow },
  'fieldCheck.discharge': {
    name: say`Known hole, discharge coefficient`,
    dimension: 'ratio',
    low: 0.3,
    high: 1,
    not: say`a discharge coefficient`,
  },
  'zones.*.house': { name: say`house to outdoors`, ...zonePressure },
  'zones.*.houseZone': { name: say`house to zone`, ...zonePressure },
  'zones.*.zoneOutdoors': { name: say`zone to outdoors`, ...zonePressure },
  'zones.*.exponent': {
    name: say`exponent n`,
    dimension: 'ratio',
    low: 0.5,
    high: 1,
    not: say`an exponent of leakage`,
  },
  'zones.*.closed': { name: say`flow with the zone closed`, ...flow },
  'zones.*.opened': { name: say`flow with the zone opened`, ...flow },
  instrumentFigure: { name: say`Instrument’s own figure`, ...flow, not: say`a flow` },
  ownLimit: { name: say`Own limit`, dimension: 'ratio', above: 0, high: 1e6, not: say`a limit` },
  'building.floorArea': {
    name: say`Floor area`,
    dimension: 'area',
    above: 0,
    high: 1e7,
    not: say`the area of a floor`,
  },
  'building.volume': { name: say`Volume`, dimension: 'volume', above: 0, high: 1e7, not: say`the volume of a house` },
  'building.enclosureArea': {
    name: say`Enclosure area`,
    dimension: 'area',
    above: 0,
    high: 1e7,
    not: say`the area of an enclosure`,
  },
  'building.enclosureAreaWithoutFloor': {
    name: say`Enclosure area without the lowest floor`,
    dimension: 'area',
    above: 0,
    high: 1e7,
    not: say`the area of an enclosure`,
  },
  'building.height': {
    name: say`Height`,
    dimension: 'length',
    above: 0,
    high: 1000,
    not: say`the height of a building`,
  },
  'building.bedrooms': {
    name: say`Bedrooms`,
    dimension: 'ratio',
    low: 0,
    high: 1000,
    whole: true,
    not: say`a number of bedrooms`,
  },
  'building.stories': { name: say`Stories`, dimension: 'ratio', above: 0, high: 200, not: say`a number of stories` },
  'building.volumePercent': { name: say`Volume uncertainty`, ...percent },
  'building.weatherShieldingFactor': {
    name: say`Weather and shielding factor`,
    dimension: 'ratio',
    low: 0.01,
    high: 2,
    not: say`a weather and shielding factor`,
  },
  'building.elevation': {
    name: say`Elevation`,
    dimension: 'length',
    low: -450,
    high: 8900,
    not: say`the elevation of a site`,
  },
  'device.calibrationDensity': {
    name: say`Device, calibration density`,
    dimension: 'density',
    low: 0.5,
    high: 2,
    not: say`the density of air`,
  },
  'device.ranges.*.coefficient': {
    name: say`coefficient`,
    dimension: 'flow',
    above: 0,
    high: 1e5,
    not: say`a coefficient`,
  },
  'device.ranges.*.exponent': {
    name: say`exponent`,
    dimension: 'ratio',
    low: 0.1,
    high: 2,
    not: say`the exponent of a range`,
  },
  'device.ranges.*.minPressure': {
    name: say`lowest pressure`,
    dimension: 'pressure',
    low: 0,
    high: 10_000,
    not: say`a device pressure`,
  },
  'device.ranges.*.maxPressure': {
    name: say`highest pressure`,
    dimension: 'pressure',
    above: 0,
    high: 10_000,
    not: say`a device pressure`,
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
const cellAt = (path: string): Cell | undefined => cells[general(path)]

/** Names of the cells that hold no number. */
const others: Record<string, string> = {
  'points.*.range': say`range`,
  'points.*.fans.*.range': say`range`,
  'fans.*.device': say`device`,
  points: say`Readings`,
  device: say`Device`,
  'device.ranges.*.name': say`name`,
  limit: say`Limit`,
}

/** What a person calls the cell at a path: `Point 3, flow`. `range` names the range that a path of a device points at. */
export function nameOf(path: string, range = ''): string {
  const name = cellAt(path)?.name ?? others[general(path)] ?? path
  const point = /^points\.(\d+)/.exec(path)
  const fan = /(?:^|\.)fans\.(\d+)/.exec(path)
  if (fan) {
    const number = Number(fan[1]) + 1
    return point ? say`Point ${Number(point[1]) + 1}, fan ${number}, ${name}` : say`Fan ${number}, ${name}`
  }
  if (point) return name === path ? say`Point ${Number(point[1]) + 1}` : say`Point ${Number(point[1]) + 1}, ${name}`
  const zone = /^zones\.(\d+)/.exec(path)
  if (zone) return say`Zone ${Number(zone[1]) + 1}, ${name}`
  const at = /^device\.ranges\.(\d+)/.exec(path)
  return at ? say`Range ${range ? `“${range}”` : Number(at[1]) + 1}, ${name}` : name
}

/** The unit a cell is typed in when nothing else stands behind its number. */
function unitOf(dimension: Dimension, units: TypedUnits): string {
  if (dimension === 'flow') return units.flow
  if (dimension === 'temperature') return units.temperature
  if (dimension === 'length') return units.length
  if (dimension === 'opening') return units.length === 'ft' ? 'in2' : 'cm2'
  if (dimension === 'area') return `${units.length}2`
  return dimension === 'volume' ? `${units.length}3` : BASE[dimension]
}

/** The unit that the cell at a path is typed in. */
export const unitAt = (path: string, units: TypedUnits): string => unitOf(cellAt(path)?.dimension ?? 'ratio', units)

/** Less than this is no quantity that a tester meets. */
const NOTHING = 1e-6

/** A number of ours in a sentence: no more digits than it takes, thousands parted. */
const written = (value: number, unit: string) =>
  `${write(Number(value.toPrecision(3)), { grouping: ',' })} ${symbol(unit)}`.trim()

/** What to do about a cell that is not needed for every figure, unless a caller says better. */
const OR_EMPTY = say`or empty the cell`

/** What a cell's text stands for in `unit`, or the problem with it, or neither when it is empty. */
export function cellValue(
  text: string,
  path: string,
  unit: string,
  { range = '', remedy = OR_EMPTY, marks }: { range?: string; remedy?: string; marks?: Marks | undefined } = {},
): { value?: number; problem?: Problem } {
  const cell = cellAt(path)
  if (cell === undefined) throw new RangeError(`${path} is not a cell that holds a number.`)
  const name = nameOf(path, range)
  const bad = (code: string, message: string) => ({
    problem: { path, code, severity: 'bad' as const, message: `${name}: ${message}` },
  })
  const reading = readCell(text, unit, marks)
  if ('fault' in reading) {
    if (reading.fault === 'empty') return {}
    if (reading.fault === 'long') {
      return bad(
        'too-long',
        say`${text.length.toLocaleString('en-US')} characters are too long for a number. Type one number, ${remedy}.`,
      )
    }
    if (reading.fault === 'two ways') return bad('two-ways', reading.message)
    if (reading.fault === 'unit') {
      return bad(
        'unknown-unit',
        say`${quote(reading.unit ?? '')} is not a unit known here. Type the number in ${symbol(unit) || say`plain digits`}, ${remedy}.`,
      )
    }
    return bad(
      'not-a-number',
      say`${quote(text.trim())} is not a number. Type digits, for example 433 or 1,020.5, ${remedy}.`,
    )
  }
  const base = BASE[cell.dimension]
  const value = inUnit(reading.value, reading.unit, unit)
  if (value === undefined) {
    return bad(
      'wrong-unit',
      say`${quote(symbol(reading.unit))} is not a unit for this cell. Type the number in ${symbol(unit) || say`plain digits`}, ${remedy}.`,
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
  return bad('out-of-range', say`${text.trim()} is not ${cell.not}. Type ${allowed(cell, unit, measured)}, ${remedy}.`)
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
  const to = (value: number) => written(inUnit(value, BASE[cell.dimension], unit) ?? value, unit)
  const kind = cell.whole === true ? say`a whole number` : say`a number`
  if (cell.nonzero === true && Math.abs(measured) < NOTHING) return say`what was read, other than 0`
  if (cell.above !== undefined) return measured > cell.high ? say`${kind} up to ${to(cell.high)}` : say`${kind} above 0`
  return say`${kind} from ${to(cell.low ?? 0)} to ${to(cell.high)}`
}

/** How many decimals a number was typed with; nothing when the text does not show it (an exponent). */
export function typedDecimals(text: string, value: number): number | undefined {
  if (/e/i.test(text)) return undefined
  // `15,810 ft3` ends in a unit: its digit is none of the number.
  const unit = text.search(/[\p{L}°%]/u)
  const digits = (unit < 0 ? text : text.slice(0, unit)).replaceAll(/\D/g, '')
  // No cell takes as many digits.
  if (digits.length > 60) return undefined
  if (value === 0) return Math.max(0, digits.length - 1)
  for (let decimals = 0; decimals <= digits.length; decimals++) {
    if (Math.abs(Math.abs(value) - Number(`${digits}e-${decimals}`)) <= Math.abs(value) * 1e-12) return decimals
  }
  return undefined
}
