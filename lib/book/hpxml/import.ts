/** Jobs from an HPXML file. Nothing is overwritten: every building becomes a new job. */
import * as z from 'zod/mini'
import { cellValue } from '../../job/cells.ts'
import { emptyJob, emptyPoint, emptyTest, emptyTester, nextRole } from '../../job/empty.ts'
import { reduceTest } from '../../job/reduce.ts'
import { jobSchema, type Device, type Job, type Test, type Tester } from '../../job/schema.ts'
import { unitSets } from '../../job/units.ts'
import { convert } from '../../units/convert.ts'
import { refuse, type BookError } from '../error.ts'
import { parseJson } from '../parse-json.ts'
import { jobAsTyped } from './export.ts'
import { namespace, readable } from './standard.ts'
import { allAt, childrenOf, textAt } from './xml.ts'
import { usualFlow } from '../../reduce/figures/index.ts'
import { say } from '../../words/say.ts'

/** A file of one house has a few hundred kB. Nothing else can be done in the page while the browser parses one. */
export const largest = 4_000_000
const mostJobs = 100
const mostTests = 50
/** So many sentences say what stays in the file; the others are counted. */
const mostLeft = 20

export interface HpxmlJob {
  job: Job
  /** What comes in, a line each. */
  lines: string[]
  /** What stays in the file, and why. */
  left: string[]
}

type Parse = (text: string) => Document

const platform: Parse = (text) => new DOMParser().parseFromString(text, 'application/xml')

const refusal = (message: string): BookError => refuse('', message)

export const tooLarge = (size: number): BookError =>
  refusal(say`The file is too large: ${Math.ceil(size / 1e6)} MB, where 4 MB are read. Split it.`)

/**
 * Reads a file and says what it would add; changes nothing.
 *
 * @throws BookError when it is not an HPXML file that can be read, with a sentence that says why
 */
export function readHpxml(text: string, devices: readonly Device[] = [], parse: Parse = platform): HpxmlJob[] {
  const root = openDocument(text, parse)
  const buildings = childrenOf(root, 'Building')
  if (buildings.length === 0) throw refusal(say`The file holds no building. Export one with a Building element.`)
  if (buildings.length > mostJobs) {
    throw refusal(say`The file holds ${buildings.length} buildings, more than ${mostJobs}. Split it.`)
  }
  const tester = testerOf(root)
  return buildings.map((building) => jobOf(building, tester, devices))
}

function openDocument(text: string, parse: Parse): Element {
  if (text.length > largest) {
    throw tooLarge(text.length)
  }
  // Before any parser sees it: entities can grow a small file without end or name other files.
  if (/<!(DOCTYPE|ENTITY)/i.test(text)) {
    throw refusal(say`The file declares a document type or entities, which HPXML does not use. Export it without them.`)
  }
  const root = parsed(text, parse)
  if (root.localName !== 'HPXML') throw refusal(say`The file begins with ${quoted(root.localName)}, not with HPXML.`)
  const version = root.getAttribute('schemaVersion') ?? ''
  if (readable.includes(version)) {
    if (root.namespaceURI === namespace) return root
    const named = root.namespaceURI ? quoted(root.namespaceURI, 80) : say`none`
    throw refusal(
      say`The file says that it is HPXML ${version}, but the namespace of its elements is ${named}, where that version has ${quoted(namespace, 80)}. Export it again from the program that wrote it.`,
    )
  }
  const which = version ? say`version ${quoted(version)}` : say`a version that it does not name`
  throw refusal(say`The file is HPXML in ${which}. Read are 4.0 to 4.2: export it in one of these.`)
}

function parsed(text: string, parse: Parse): Element {
  const broken = say`The file is not well-formed XML: it may be cut off or not an HPXML file. Export it again.`
  let document: Document
  try {
    document = parse(text.replace(/^\uFEFF/, ''))
  } catch {
    throw refusal(broken)
  }
  // Browsers give an element of this name in place of an error.
  const root = document.documentElement as Element | null
  if (root === null || document.getElementsByTagName('parsererror').length > 0) throw refusal(broken)
  return root
}

const quoted = (text: string, most = 40): string => `“${text.length > most ? `${text.slice(0, most)}…` : text}”`

/** A number of the file above zero; undefined for anything else. */
function positive(element: Element, ...path: string[]): number | undefined {
  const text = textAt(element, ...path)
  const value = text === undefined ? NaN : Number(text)
  return Number.isFinite(value) && value > 0 ? value : undefined
}

const cell = (value: number | undefined): string => (value === undefined ? '' : String(Number(value.toPrecision(12))))
const short = (text: string | undefined): string => (text ?? '').slice(0, 1000)

function testerOf(root: Element): Tester {
  const info = allAt(root, 'Contractor', 'ContractorDetails', 'BusinessInfo')[0]
  if (!info) return emptyTester()
  const person = allAt(info, 'BusinessContact', 'Person')[0]
  const part = (...path: string[]) => short(person && textAt(person, ...path))
  return {
    name: [part('Name', 'FirstName'), part('Name', 'LastName')].filter(Boolean).join(' '),
    company: short(textAt(info, 'BusinessName')),
    licence: part('extension', 'Licence'),
    licenceExpiry: part('extension', 'LicenceExpiry'),
    phone: part('Telephone', 'TelephoneNumber'),
    email: part('Email', 'EmailAddress'),
  }
}

function jobOf(building: Element, tester: Tester, devices: readonly Device[]): HpxmlJob {
  const { job, left } = fromElements(building, tester)
  const kept = asTyped(building)
  if (!kept) return { job, lines: linesOf(job, ''), left }
  if (sameResults(kept, job, devices)) {
    const now = new Date().toISOString()
    const fresh = { ...kept, id: job.id, created: now, updated: now, tests: kept.tests.map(renewed) }
    delete fresh.demo
    return { job: fresh, lines: linesOf(fresh, say`, with its readings as typed`), left: [] }
  }
  left.push(
    say`The readings as typed in the file do not lead to its results, or need a device that is not here. Only the results come in.`,
  )
  return { job, lines: linesOf(job, ''), left }
}

const renewed = (test: Test): Test => ({ ...test, id: crypto.randomUUID() })

/** The job as this program wrote it into the file. */
function asTyped(building: Element): Job | undefined {
  const text = textAt(building, 'ProjectStatus', 'extension', jobAsTyped)
  if (text === undefined) return undefined
  try {
    return z.parse(jobSchema, parseJson(text))
  } catch {
    return undefined
  }
}

/** Whether every result in the elements follows from the readings as typed, and none is missing. */
function sameResults(kept: Job, found: Job, devices: readonly Device[]): boolean {
  const results = (job: Job) =>
    job.tests
      .flatMap((test) => {
        const figures = reduceTest(job, test, [...devices]).report?.figures
        const flow = figures?.[usualFlow(test.sheet.subject)]
        return flow ? { flow: convert(flow.value, flow.unit, 'cfm'), subject: test.sheet.subject } : []
      })
      .toSorted((a, b) => a.subject.localeCompare(b.subject) || a.flow - b.flow)
  const [own, others] = [results(kept), results(found)]
  return (
    own.length === others.length &&
    own.every(({ flow, subject }, at) => {
      const other = others[at]
      return other?.subject === subject && Math.abs(other.flow - flow) <= 1e-6 * flow
    })
  )
}

function fromElements(building: Element, tester: Tester): { job: Job; left: string[] } {
  const left: string[] = []
  const job = emptyJob(unitSets.IP, tester)
  const address = allAt(building, 'Site', 'Address')[0]
  const part = (name: string) => short(address && textAt(address, name))
  const construction = allAt(building, 'BuildingDetails', 'BuildingSummary', 'BuildingConstruction')[0] ?? building
  const measured = allAt(building, 'BuildingDetails', 'Enclosure', 'AirInfiltration', 'AirInfiltrationMeasurement')
  const firstOf = (name: string) => measured.map((one) => positive(one, name)).find((value) => value !== undefined)
  const volume = firstOf('InfiltrationVolume') ?? positive(construction, 'BuildingVolume')
  Object.assign(job.building, {
    street: part('Address1'),
    unit: part('Address2'),
    town: part('CityMunicipality'),
    state: part('StateCode'),
    postcode: part('ZipCode'),
    floorArea: cell(positive(construction, 'ConditionedFloorArea')),
    bedrooms: cell(positive(construction, 'NumberofBedrooms')),
    stories: cell(
      positive(construction, 'NumberofStoriesAboveGrade') ??
        positive(construction, 'NumberofConditionedFloorsAboveGrade'),
    ),
    volume: cell(volume),
    height: cell(firstOf('InfiltrationHeight')),
  } satisfies Partial<Job['building']>)

  const event = textAt(building, 'ProjectStatus', 'EventType') ?? ''
  houseTests(job, measured, volume, stageOf(event), left)
  ductTests(job, building, stageOf(event), left)
  if (job.tests.length === 0) left.push(say`No result of a test is in the file; the building alone comes in.`)
  if (left.length > mostLeft) left.splice(mostLeft, Infinity, say`and ${left.length - mostLeft} more.`)
  return { job, left }
}

function stageOf(event: string): Test['stage'] {
  if (event === 'job completion testing/final inspection') return 'final'
  return event === 'audit' || event === 'preconstruction' ? 'existing' : ''
}

const reported = say`Taken in from an HPXML file: the result as reported, taken as a reading.`

/** Whether another test fits in; where it does not, that is said once. */
function fits(job: Job, left: string[]): boolean {
  if (job.tests.length < mostTests) return true
  const only = say`Only the first ${mostTests} tests of the building come in.`
  if (!left.includes(only)) left.unshift(only)
  return false
}

const unitOf = (one: Element): string => textAt(one, 'BuildingAirLeakage', 'UnitofMeasure') ?? ''

function houseTests(job: Job, measured: Element[], volume: number | undefined, stage: Test['stage'], left: string[]) {
  // Flows first: air changes that say the same of the same test are no test of their own.
  const inOrder = measured.toSorted((a, b) => Number(unitOf(a) === 'ACH') - Number(unitOf(b) === 'ACH'))
  const known: { key: string; flow: number }[] = []
  for (const one of inOrder) {
    const unit = unitOf(one)
    const id = quoted(allAt(one, 'SystemIdentifier')[0]?.getAttribute('id') ?? say`without an id`)
    const leakage = positive(one, 'BuildingAirLeakage', 'AirLeakage')
    const pressure = positive(one, 'HousePressure')
    const space = positive(one, 'InfiltrationVolume') ?? volume
    const kind = textAt(one, 'TypeOfInfiltrationMeasurement') ?? 'blower door'
    const flow = unit === 'ACH' && leakage && space ? (leakage * space) / 60 : leakage
    if (kind !== 'blower door') left.push(say`Measurement ${id} is ${quoted(kind)}, not a blower-door test.`)
    else if (unit !== 'CFM' && unit !== 'ACH')
      left.push(say`Measurement ${id} is in ${quoted(unit)}, which is no reading of a test.`)
    else if (flow === undefined || leakage === undefined) left.push(say`Measurement ${id} has no leakage above zero.`)
    else if (pressure === undefined) left.push(say`Measurement ${id} has no house pressure above zero.`)
    else if (unit === 'ACH' && !space) left.push(say`Measurement ${id} is in air changes, and no volume is given.`)
    else {
      const direction = textAt(one, 'TypeOfBlowerDoorTest') === 'pressurization' ? 'pressurize' : 'depressurize'
      const date = textAt(one, 'Date') ?? ''
      const key = `${date} ${direction} ${pressure}`
      if (unit === 'ACH' && known.some((other) => other.key === key && Math.abs(other.flow - flow) <= 0.01 * flow))
        continue
      if (!fits(job, left)) break
      known.push({ key, flow })
      job.tests.push(houseTest(job, one, { flow, pressure, direction, date, stage }))
    }
  }
}

function houseTest(
  job: Job,
  one: Element,
  from: { flow: number; pressure: number; direction: Test['sheet']['direction']; date: string; stage: Test['stage'] },
): Test {
  const { flow, pressure, direction, date, stage } = from
  const role =
    stage === 'final' && !job.tests.some((test) => test.role === 'final') ? 'final' : nextRole(job, 'enclosure')
  const test = emptyTest(role, 'enclosure', unitSets.IP)
  const wind = textAt(one, 'WindConditions')
  const outdoor = Number(textAt(one, 'OutsideTemperature') ?? NaN)
  const exponent = textAt(one, 'extension', 'Exponent') ?? ''
  const usable = exponent !== '' && cellValue(exponent, 'exponent', '1').value !== undefined
  return {
    ...test,
    date: short(date),
    stage,
    wind: wind === 'windy' ? 'windy' : wind === 'normal' ? 'light' : '',
    notes: reported,
    sheet: {
      ...test.sheet,
      direction,
      flowBasis: 'actual',
      exponent: usable ? exponent : '',
      outdoor: Number.isFinite(outdoor) ? String(outdoor) : '',
      points: [
        { ...emptyPoint(), pressure: `${direction === 'depressurize' ? '-' : ''}${cell(pressure)}`, flow: cell(flow) },
      ],
    },
  }
}

function ductTests(job: Job, building: Element, stage: Test['stage'], left: string[]) {
  const measured = allAt(
    building,
    'BuildingDetails',
    'Systems',
    'HVAC',
    'HVACDistribution',
    'DistributionSystemType',
    'AirDistribution',
    'DuctLeakageMeasurement',
  )
  for (const one of measured) {
    const units = textAt(one, 'DuctLeakage', 'Units') ?? ''
    const value = positive(one, 'DuctLeakage', 'Value')
    const pressure = units === 'CFM25' ? '25' : units === 'CFM50' ? '50' : undefined
    if (pressure === undefined) left.push(say`A duct leakage is in ${quoted(units)}, which is no reading of a test.`)
    else if (value === undefined) left.push(say`A duct leakage is not above zero.`)
    else if (!fits(job, left)) break
    else job.tests.push(ductTest(job, one, pressure, value, stage))
  }
}

function ductTest(job: Job, one: Element, pressure: string, value: number, stage: Test['stage']): Test {
  const test = emptyTest(nextRole(job, 'ducts'), 'ducts', unitSets.IP)
  const side = textAt(one, 'DuctType')
  return {
    ...test,
    date: '',
    stage,
    notes: side ? `${reported} ${side} side.` : reported,
    sheet: {
      ...test.sheet,
      flowBasis: 'actual',
      ductLeakage: textAt(one, 'DuctLeakage', 'TotalOrToOutside') === 'to outside' ? 'outside' : 'total',
      points: [{ ...emptyPoint(), pressure, flow: cell(value) }],
    },
  }
}

function linesOf(job: Job, how: string): string[] {
  return job.tests.map(({ role, date, sheet: { subject, points } }) => {
    const what = subject === 'ducts' ? say`ducts` : say`enclosure`
    const [first] = points
    const reading =
      points.length === 1 && first ? say`, ${first.flow} at ${first.pressure} Pa` : say`, ${points.length} readings`
    const day = date ? say` on ${date}` : ''
    return say`Test ${quoted(role)} of the ${what + day + reading + how}.`
  })
}
