/** Turns the typed cells of a test into the sheet that the figures are computed from. */
import { usualInstrument } from '../reduce/uncertainty.ts'
import type { Point, Sheet } from '../sheet/schema.ts'
import { marksIn } from '../units/comma.ts'
import { marksOf, type Marks } from '../units/marks.ts'
import { convert } from '../units/convert.ts'
import { cellValue, nameOf, unitAt } from './cells.ts'
import { quote } from './read-cell.ts'
import { reasonOf } from './left-out.ts'
import type { Problem } from './problem.ts'
import { readRanges } from './ranges.ts'
import type { Building, Device, Job, Test, TypedPoint, TypedSheet, TypedUnits } from './schema.ts'
import { isRegression } from './edits.ts'
import { severalFans } from './several-fans.ts'
import { say } from '../words/say.ts'

export interface ReadTest {
  /** Absent while no row is complete. */
  sheet?: Sheet
  /** For each point of the sheet, the index of its row among the typed ones. */
  rows: number[]
  /** Points that the person left out, as far as they can be read. */
  apart: { row: number; point: Point }[]
  problems: Problem[]
}

const LONGEST_BASELINE = 10_000
const MOST_BASELINES = 1000
const ROW_REMEDY = say`or empty the row; until then it is left out`

/** Reads cells and keeps what is wrong with them. */
export class Reader {
  readonly problems: Problem[] = []
  readonly #marks: (path: string) => Marks

  /** @param marks of the cell at a path */
  constructor(marks: (path: string) => Marks) {
    this.#marks = marks
  }

  /** The number in a cell, in `unit`; nothing when the cell is empty or bad. */
  value(text: string, path: string, unit: string, remedy?: string): number | undefined {
    const { value, problem } = cellValue(text, path, unit, {
      ...(remedy !== undefined && { remedy }),
      marks: this.#marks(path),
    })
    if (problem) this.problems.push(problem)
    return value
  }

  /** One whose problems are not told. */
  apart(): Reader {
    return new Reader(this.#marks)
  }

  missing(path: string, message: string): void {
    this.problems.push({ path, code: 'missing', severity: 'missing', message: `${nameOf(path)}: ${message}` })
  }

  bad(path: string, code: string, message: string): void {
    this.problems.push({ path, code, severity: 'bad', message: `${nameOf(path)}: ${message}` })
  }
}

/** The entries that hold something. */
function present<T extends object>(entries: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>
  }
}

/**
 * The sheet of a test. Empty rows are ignored; a row that is half filled or holds a bad cell is left out and named; a bad
 * cell outside the rows is left out and named, so that the figures that do not need it still show.
 */
export function readTest(job: Pick<Job, 'units' | 'building'>, test: Test, devices: Device[]): ReadTest {
  const marks = marksAt(test.sheet, test.units)
  const reader = new Reader((path) => (path.startsWith('building.') ? marksIn(job.units) : marks(path)))
  const { sheet: typed, units } = test
  const device = devices.find(({ id }) => id === typed.device)
  const several = typed.reading === 'fans' ? { air: readAir(reader, job, test) } : undefined
  const { points, rows, apart, ranges } = several
    ? severalFans().read(reader, test, devices, several.air)
    : readPoints(reader, test, device)
  const baseline = {
    before: readBaseline(reader, typed.baselineBefore, 'baselineBefore'),
    after: readBaseline(reader, typed.baselineAfter, 'baselineAfter'),
  }
  const density = several
    ? undefined
    : device && reader.value(device.calibrationDensity, 'device.calibrationDensity', 'kg/m3')
  const withDevice = typed.reading === 'device' || density !== undefined
  const onePoint = typed.procedure === 'one-point'
  const optional = present({
    device: withDevice ? { ranges, ...present({ calibrationDensity: density }) } : undefined,
    air: several ? several.air : readAir(reader, job, test),
    corrections: typed.corrections,
    exponent: onePoint ? reader.value(typed.exponent, 'exponent', '1') : undefined,
    exponentUncertainty: onePoint ? reader.value(typed.exponentUncertainty, 'exponentUncertainty', '1') : undefined,
    instrument: readInstrument(reader, test),
    building: readBuilding(reader, job, test),
    fieldCheck: readFieldCheck(reader, test),
    duct: typed.subject === 'ducts' ? readDuct(reader, test) : undefined,
    weatherShieldingFactor: buildingValue(reader, job, test, 'weatherShieldingFactor'),
    averaging: readAveraging(reader, test),
    pressureScatter: reader.value(typed.pressureScatter ?? '', 'pressureScatter', 'Pa') ?? windScatter[test.wind],
    line: isRegression(typed) ? typed.line : undefined,
  })
  reader.value(test.instrumentFigure, 'instrumentFigure', units.flow)
  if (points.length === 0) {
    if (!reader.problems.some(({ path }) => path.startsWith('points.') || path.startsWith('device'))) {
      const all = typed.points.some((point) => reasonOf(point) !== '')
      reader.problems.push({
        path: 'points.0.pressure',
        code: 'missing',
        severity: 'missing',
        message: all
          ? say`Readings: every point is left out. Take one back, or read another.`
          : typed.reading !== 'device'
            ? say`Readings: nothing typed yet. Type the pressure and the flow of a point.`
            : say`Readings: nothing typed yet. Type the pressure, the device pressure and the range of a point.`,
      })
    }
    return { rows, apart, problems: reader.problems }
  }
  const sheet: Sheet = {
    subject: typed.subject,
    procedure: typed.procedure,
    direction: typed.direction,
    units,
    baseline,
    points,
    flowBasis: typed.flowBasis,
    ...optional,
  }
  return { sheet, rows, apart, problems: reader.problems }
}

const numbersIn = ({ pressure, flow, devicePressure, fans = [] }: TypedPoint) => [
  pressure,
  flow,
  devicePressure,
  ...fans.flatMap((fan) => [fan.flow, fan.devicePressure]),
]

/** The decimal mark at a path of a test: that of its row, else that of all rows, else what is known of all its cells. */
export function marksAt({ points }: Pick<TypedSheet, 'points'>, units: TypedUnits): (path: string) => Marks {
  const all = marksOf(points.flatMap(numbersIn))
  return (path) => {
    const point = points[Number(/^points\.(\d+)\./.exec(path)?.[1])]
    return (point && (marksOf(numbersIn(point)) ?? all)) ?? marksIn(units)
  }
}

export interface Points {
  points: Sheet['points']
  rows: number[]
  apart: ReadTest['apart']
  ranges: NonNullable<Sheet['device']>['ranges']
}

function readPoints(reader: Reader, test: Test, device: Device | undefined): Points {
  const typed = test.sheet
  const byDevice = typed.reading === 'device'
  const found: Points = { points: [], rows: [], apart: [], ranges: {} }
  const filled = typed.points.map((point, row) => ({ point, row })).filter(({ point }) => !isEmpty(point))
  if (byDevice && filled.length > 0 && device === undefined) {
    const remedy = say`Choose the device whose ranges reduce the device pressures, or set the readings to flow.`
    if (typed.device === '') reader.missing('device', say`nothing chosen. ${remedy}`)
    else reader.bad('device', 'unknown-device', say`it is not among your devices any more. ${remedy}`)
  }
  const used = new Set(filled.map(({ point }) => point.range.trim()))
  const { ranges, problems } = readRanges(byDevice ? device : undefined, test.units, used)
  reader.problems.push(...problems)
  found.ranges = ranges
  for (const { point, row } of filled) {
    const path = `points.${row}`
    const left = reasonOf(point) !== ''
    // Nothing is asked of a point that is not reduced.
    const ask = left ? reader.apart() : reader
    const pressure = rowValue(ask, point.pressure, `${path}.pressure`, 'Pa', say`pressure`)
    const place = byDevice
      ? readDevicePoint(ask, point, path, device, ranges)
      : readFlow(ask, point, path, test.units.flow)
    if (pressure === undefined || place === undefined) continue
    if (left) found.apart.push({ row, point: { pressure, ...place } })
    else {
      found.points.push({ pressure, ...place })
      found.rows.push(row)
    }
  }
  return found
}

/** A row in which only the range stands, or nothing, is empty: the range is carried on from the row above. */
export const isEmpty = (point: TypedPoint): boolean =>
  numbersIn(point).every((text) => text.length < 100 && text.trim() === '')

/** A number that a row cannot do without. */
export function rowValue(reader: Reader, text: string, path: string, unit: string, what: string): number | undefined {
  const value = reader.value(text, path, unit, ROW_REMEDY)
  if (value === undefined && text.length < 100 && text.trim() === '') {
    reader.missing(path, say`nothing typed, so the row is left out. Type the ${what}, or empty the row.`)
  }
  return value
}

function readFlow(reader: Reader, point: TypedPoint, path: string, unit: string): { flow: number } | undefined {
  if (point.flow.trim() === '' && point.devicePressure.trim() !== '') {
    reader.missing(
      `${path}.flow`,
      say`nothing typed, so the row is left out. Type the flow, or set the readings to device pressure, which this row holds.`,
    )
    return undefined
  }
  const flow = rowValue(reader, point.flow, `${path}.flow`, unit, say`flow`)
  return flow === undefined ? undefined : { flow }
}

function readDevicePoint(
  reader: Reader,
  point: TypedPoint,
  path: string,
  device: Device | undefined,
  ranges: Points['ranges'],
): { devicePressure: number; range: string } | undefined {
  const devicePressure = rowValue(reader, point.devicePressure, `${path}.devicePressure`, 'Pa', say`device pressure`)
  if (device === undefined) return undefined
  const range = point.range.trim()
  const names = device.ranges.map(({ name }) => name.trim()).filter((name) => name !== '')
  if (range === '') {
    reader.missing(`${path}.range`, say`nothing chosen, so the row is left out. Choose the range that was in use.`)
    return undefined
  }
  if (!names.includes(range)) {
    const choice =
      names.length === 0 ? say`Type its ranges under devices.` : say`Choose ${names.map(quote).join(', ')}.`
    const whose = device.name.trim() === '' ? say`the device` : quote(device.name.trim())
    reader.bad(`${path}.range`, 'unknown-range', say`${quote(range)} is not a range of ${whose}. ${choice}`)
    return undefined
  }
  if (devicePressure === undefined || !Object.hasOwn(ranges, range)) return undefined
  return { devicePressure, range }
}

/** The readings of a baseline cell, parted by spaces or semicolons. One bad reading is left out and named. */
function readBaseline(reader: Reader, text: string, path: string): number[] {
  if (text.length > LONGEST_BASELINE) {
    const length = text.length.toLocaleString('en-US')
    reader.bad(
      path,
      'too-long',
      say`${length} characters are too long for a baseline. Type a few readings, or empty the cell.`,
    )
    return []
  }
  const joined = text.replaceAll(/(^|[\s;])([-−–+])\s+(?=[\d.,])/g, '$1$2').replaceAll(/(\d)\s*Pa\b/gi, '$1 ')
  const parts = joined.split(/[\s;]+|,(?=[\s\-−–+])/).filter((part) => part !== '')
  if (parts.length > MOST_BASELINES) {
    reader.bad(
      path,
      'too-many',
      say`${parts.length.toLocaleString('en-US')} readings are too many. Type at most 1,000.`,
    )
    return []
  }
  return parts.flatMap((part) => reader.value(part, path, 'Pa', say`or take it out`) ?? [])
}

function readAir(reader: Reader, job: Pick<Job, 'units' | 'building'>, test: Test): Sheet['air'] {
  const { sheet: typed, units } = test
  const indoor = reader.value(typed.indoor, 'indoor', units.temperature)
  const outdoor = reader.value(typed.outdoor, 'outdoor', units.temperature)
  const barometer = reader.value(typed.barometer, 'barometer', 'Pa')
  const elevation = buildingValue(reader, job, test, 'elevation')
  if (indoor !== undefined && outdoor !== undefined) {
    return { indoor, outdoor, ...present({ elevation, barometer }) }
  }
  if (indoor !== undefined && typed.outdoor.trim() === '')
    reader.missing(
      'outdoor',
      say`nothing typed, so the density of the air is left uncorrected. Type it, or empty the indoor temperature.`,
    )
  if (outdoor !== undefined && typed.indoor.trim() === '')
    reader.missing(
      'indoor',
      say`nothing typed, so the density of the air is left uncorrected. Type it, or empty the outdoor temperature.`,
    )
  return undefined
}

function readInstrument(reader: Reader, test: Test): Sheet['instrument'] {
  const { sheet: typed } = test
  const own = present({
    pressurePercent: reader.value(typed.pressurePercent, 'pressurePercent', '%'),
    pressureFloor: reader.value(typed.pressureFloor, 'pressureFloor', 'Pa'),
    flowPercent: reader.value(typed.flowPercent, 'flowPercent', '%'),
  })
  return Object.keys(own).length === 0 ? undefined : { ...usualInstrument, ...own }
}

/** Scatter of one pressure reading by the wind that was noted, Pa: common practice, no source. */
const windScatter: Record<Test['wind'], number | undefined> = { '': undefined, calm: 0.2, light: 0.7, windy: 2 }

/** One averaging time alone says nothing: scatter is carried from one to the other. */
function readAveraging(reader: Reader, { sheet }: Test): Sheet['averaging'] {
  const baseline = reader.value(sheet.baselineSeconds ?? '', 'baselineSeconds', '1')
  const reading = reader.value(sheet.readingSeconds ?? '', 'readingSeconds', '1')
  return baseline === undefined || reading === undefined ? undefined : { baseline, reading }
}

const FIELD_CHECK = ['area', 'pressure', 'flow'] as const

/** The known hole when all of it is typed; what is missing is asked for once a part of it stands. */
function readFieldCheck(reader: Reader, test: Test): Sheet['fieldCheck'] {
  const typed = test.sheet.fieldCheck
  if (typed === undefined || Object.values(typed).every((text) => text.trim() === '')) return undefined
  const read = (field: keyof typeof typed) => {
    const path = `fieldCheck.${field}`
    return reader.value(typed[field], path, unitAt(path, test.units))
  }
  for (const field of FIELD_CHECK) {
    if (typed[field].trim() !== '') continue
    reader.missing(
      `fieldCheck.${field}`,
      say`nothing typed, so the flow is not checked against the hole. Type it, or empty the other cells of the hole.`,
    )
  }
  const [area, pressure, flow, discharge] = [read('area'), read('pressure'), read('flow'), read('discharge')]
  if (area === undefined || pressure === undefined || flow === undefined) return undefined
  return { area, pressure, flow, ...present({ discharge }) }
}

function readDuct(reader: Reader, test: Test): Sheet['duct'] {
  const airHandlerFlow = reader.value(test.sheet.airHandlerFlow, 'airHandlerFlow', test.units.flow)
  return { leakage: test.sheet.ductLeakage, ...present({ airHandlerFlow }) }
}

/** A number of the building, typed in the job's units, in the units of the test. */
function buildingValue(
  reader: Reader,
  job: Pick<Job, 'units' | 'building'>,
  test: Test,
  field: Exclude<keyof Building, 'areaSource' | 'volumeBasis'>,
): number | undefined {
  const path = `building.${field}`
  const from = unitAt(path, job.units)
  const value = reader.value(job.building[field] ?? '', path, from)
  return value === undefined ? undefined : convert(value, from, unitAt(path, test.units))
}

function readBuilding(reader: Reader, job: Pick<Job, 'units' | 'building'>, test: Test): Sheet['building'] {
  const fields = [
    'volume',
    'floorArea',
    'enclosureArea',
    'enclosureAreaWithoutFloor',
    'height',
    'bedrooms',
    'stories',
    'volumePercent',
  ] as const
  const read = Object.fromEntries(fields.map((field) => [field, buildingValue(reader, job, test, field)]))
  const served = test.sheet.subject === 'ducts' ? (test.sheet.servedArea ?? '') : ''
  if (served.trim() !== '') read['floorArea'] = reader.value(served, 'servedArea', unitAt('servedArea', test.units))
  const building: NonNullable<Sheet['building']> = present(read)
  return Object.keys(building).length === 0 ? undefined : building
}
