/** A job's tests as HPXML 4.2. What the standard has no element for stands in `extension`. */
import { ENGINE_VERSION } from '../../engine/version.ts'
import { cellValue, unitAt } from '../../job/cells.ts'
import { pointsLeftOut } from '../../job/left-out.ts'
import { takesOnePointFactor } from '../../job/one-point-factor.ts'
import { reduceTest, type ReducedTest } from '../../job/reduce.ts'
import type { Device, Job, Test } from '../../job/schema.ts'
import { baselineOf } from '../../reduce/baseline.ts'
import { marksIn } from '../../units/comma.ts'
import { convert } from '../../units/convert.ts'
import { namespace, schemaVersion, type eventTypes } from './standard.ts'
import { node, withAttribute, writeNode, type Node } from './xml.ts'

/** In the extension of the project's status: the job with every cell as typed, as JSON. */
export const jobAsTyped = 'JobAsTyped'

/** Twelve digits: more than any reading has, fewer than the noise of a conversion. */
const number = (value: number | undefined): string | undefined =>
  value === undefined || !Number.isFinite(value) ? undefined : String(Number(value.toPrecision(12)))

/** A day as the standard's `xs:date` takes it; nothing for one that no calendar has, such as 2026-02-31. */
function isoDay(text: string): string | undefined {
  const day = new Date(`${text}T00:00:00Z`)
  return Number.isFinite(day.getTime()) && day.toISOString().slice(0, 10) === text ? text : undefined
}

/** A number of the building in the unit that the standard asks for. */
function typed(job: Job, field: 'floorArea' | 'volume' | 'bedrooms' | 'stories' | 'height', to: string) {
  const path = `building.${field}`
  const from = unitAt(path, job.units)
  const { value } = cellValue(job.building[field], path, from, { marks: marksIn(job.units) })
  return value === undefined ? undefined : convert(value, from, to)
}

function figure({ report }: ReducedTest, id: string, unit: string): number | undefined {
  const found = report?.figures[id]
  return found && convert(found.value, found.unit, unit)
}

/** What the whole file is about, by the stage its last test was made in. */
function eventOf({ tests }: Job): (typeof eventTypes)[number] {
  const last = tests.toSorted((a, b) => a.date.localeCompare(b.date)).at(-1)
  if (last?.stage === 'final') return 'job completion testing/final inspection'
  return last?.stage.startsWith('rough-in') ? 'construction-period testing/daily test out' : 'audit'
}

interface Made {
  test: Test
  reduced: ReducedTest
  id: string
}

function contractor({ tester }: Job): Node | undefined {
  const name = tester.name.trim()
  if (!name && !tester.company.trim()) return undefined
  const parted = name.lastIndexOf(' ')
  const person =
    name &&
    node('BusinessContact', [
      node('Person', [
        withAttribute('SystemIdentifier', 'id', 'tester'),
        node('Name', [
          { name: 'FirstName', content: parted < 0 ? '' : name.slice(0, parted) },
          { name: 'LastName', content: name.slice(parted + 1) },
        ]),
        node('Telephone', [node('TelephoneNumber', tester.phone)]),
        node('Email', [node('EmailAddress', tester.email)]),
        node('extension', [node('Licence', tester.licence), node('LicenceExpiry', tester.licenceExpiry)]),
      ]),
    ])
  return node('Contractor', [
    node('ContractorDetails', [
      withAttribute('SystemIdentifier', 'id', 'contractor'),
      node('BusinessInfo', [
        withAttribute('SystemIdentifier', 'id', 'company'),
        { name: 'BusinessName', content: tester.company },
        person || undefined,
      ]),
    ]),
  ])
}

/** One measurement; the flow and the air changes are two, as a measurement holds one result. */
function measurement(job: Job, { test, reduced, id }: Made, unit: 'CFM' | 'ACH'): Node | undefined {
  const leakage = unit === 'CFM' ? figure(reduced, 'flow-50', 'cfm') : figure(reduced, 'air-changes-50', '1/h')
  const { sheet } = reduced
  if (!sheet || leakage === undefined || !(leakage > 0)) return undefined
  const first = unit === 'CFM'
  const size = (value: number | undefined, power: '' | '3') =>
    number(value === undefined ? undefined : convert(value, `${sheet.units.length}${power}`, `ft${power}`))
  const outside =
    sheet.air?.outdoor ??
    cellValue(test.sheet.outdoor, 'outdoor', test.units.temperature, { marks: marksIn(test.units) }).value
  return node('AirInfiltrationMeasurement', [
    withAttribute('SystemIdentifier', 'id', first ? id : `${id}-air-changes`),
    node('Date', isoDay(test.date)),
    job.tester.company || job.tester.name ? withAttribute('BusinessConductingTest', 'idref', 'company') : undefined,
    job.tester.name.trim() ? withAttribute('IndividualConductingTest', 'idref', 'tester') : undefined,
    node(
      'OutsideTemperature',
      number(outside === undefined ? undefined : convert(outside, test.units.temperature, 'degF')),
    ),
    node('WindConditions', test.wind === '' ? undefined : test.wind === 'windy' ? 'windy' : 'normal'),
    node('TypeOfInfiltrationMeasurement', 'blower door'),
    node('TypeOfBlowerDoorTest', test.sheet.direction === 'pressurize' ? 'pressurization' : 'depressurization'),
    node('HousePressure', '50'),
    node('BuildingAirLeakage', [node('UnitofMeasure', unit), node('AirLeakage', number(leakage))]),
    first ? node('EffectiveLeakageArea', number(figure(reduced, 'effective-leakage-area', 'in2'))) : undefined,
    node('InfiltrationVolume', size(sheet.building?.volume, '3')),
    node('InfiltrationHeight', size(sheet.building?.height, '')),
    first ? node('extension', working(test, reduced)) : undefined,
  ])
}

const value = (name: string, of: number | undefined) => node(name, number(of))

/** What the standard has no element for, readable without this program. */
function working(test: Test, { sheet, report, points = [] }: ReducedTest): (Node | undefined)[] {
  if (!sheet || !report) return []
  const { fit } = report
  const flow = report.figures['flow-50'] ?? report.figures['duct-flow-25']
  const { before, after } = sheet.baseline
  return [
    node('Test', test.role),
    node('Procedure', sheet.procedure),
    value('Exponent', report.figures['leakage-exponent']?.value ?? fit?.exponent),
    value('ExponentLow', fit?.exponentLow),
    value('ExponentHigh', fit?.exponentHigh),
    value('Coefficient', fit?.coefficient),
    value('CoefficientLow', fit?.coefficientLow),
    value('CoefficientHigh', fit?.coefficientHigh),
    value('Correlation', fit?.correlation),
    value('FlowLow', flow?.low),
    value('FlowHigh', flow?.high),
    node('FlowUnit', sheet.units.flow),
    node('OnePointFactor', test.onePointFactor && takesOnePointFactor(test) ? '1.1' : undefined),
    value('BaselineMean', before.length + after.length > 0 ? baselineOf(sheet.baseline).mean : undefined),
    node('BaselineBefore', before.join(' ')),
    node('BaselineAfter', after.join(' ')),
    ...sheet.points.map((point, at) =>
      node('Reading', [
        value('Pressure', point.pressure),
        'flow' in point ? value('Flow', point.flow) : value('DevicePressure', point.devicePressure),
        'range' in point ? node('Range', point.range) : undefined,
        value('PressureAcrossLeaks', points[at]?.pressure),
        value('FlowThroughLeaks', points[at]?.flow),
      ]),
    ),
    ...pointsLeftOut(test).map(({ point, reason }) =>
      node('ReadingLeftOut', [
        node('Pressure', point.pressure.trim()),
        test.sheet.reading !== 'device'
          ? node('Flow', point.flow.trim())
          : node('DevicePressure', point.devicePressure.trim()),
        node('Reason', reason),
      ]),
    ),
  ]
}

function distribution({ test, reduced, id }: Made): Node | undefined {
  const leakage = figure(reduced, 'duct-flow-25', 'cfm')
  if (leakage === undefined) return undefined
  return node('HVACDistribution', [
    withAttribute('SystemIdentifier', 'id', id),
    node('DistributionSystemType', [
      node('AirDistribution', [
        node('DuctLeakageMeasurement', [
          node('DuctLeakageTestMethod', 'duct leakage tester'),
          node('DuctLeakage', [
            node('Units', 'CFM25'),
            node('Value', number(leakage)),
            node('TotalOrToOutside', test.sheet.ductLeakage === 'outside' ? 'to outside' : 'total'),
          ]),
        ]),
      ]),
    ]),
  ])
}

/**
 * A job as an HPXML 4.2 file. Tests without a result are in the job as typed only.
 *
 * @param now stands in the head of the file
 */
export function hpxmlOf(job: Job, devices: readonly Device[], now: Date = new Date()): string {
  const made = job.tests.map((test, at) => ({
    test,
    reduced: reduceTest(job, test, [...devices]),
    id: `test-${at + 1}`,
  }))
  const houses = made.filter(({ test }) => test.sheet.subject === 'enclosure')
  const ducts = made.filter(({ test }) => test.sheet.subject === 'ducts')
  const { building } = job
  const zip = building.postcode.trim()
  const file = node('HPXML', [
    node('XMLTransactionHeaderInformation', [
      { name: 'XMLType', content: 'HPXML' },
      { name: 'XMLGeneratedBy', content: `Gapsum ${ENGINE_VERSION}` },
      node('CreatedDateAndTime', now.toISOString()),
      node('Transaction', 'create'),
    ]),
    node('SoftwareInfo', [node('SoftwareProgramUsed', 'Gapsum'), node('SoftwareProgramVersion', ENGINE_VERSION)]),
    contractor(job),
    node('Building', [
      withAttribute('BuildingID', 'id', 'building'),
      node('Site', [
        withAttribute('SiteID', 'id', 'site'),
        node('Address', [
          node('Address1', building.street),
          node('Address2', building.unit),
          node('CityMunicipality', building.town),
          node('StateCode', building.state),
          node('ZipCode', /^\d{5}(-\d{4})?$/.test(zip) ? zip : undefined),
        ]),
      ]),
      node('ProjectStatus', [
        node('EventType', eventOf(job)),
        node(
          'Date',
          made
            .map(({ test }) => isoDay(test.date) ?? '')
            .toSorted()
            .at(-1),
        ),
        node('extension', [
          ...ducts.map((one) =>
            node('DuctTest', [
              node('Distribution', one.id),
              node('Date', one.test.date),
              ...working(one.test, one.reduced),
            ]),
          ),
          node(jobAsTyped, JSON.stringify(job)),
        ]),
      ]),
      details(job, houses, ducts),
    ]),
  ])
  const root = { ...file!, attributes: { xmlns: namespace, schemaVersion } }
  return `<?xml version="1.0" encoding="UTF-8"?>\n${writeNode(root)}`
}

function details(job: Job, houses: readonly Made[], ducts: readonly Made[]): Node {
  const bedrooms = typed(job, 'bedrooms', '1')
  // The standard has whole stories only; a number of floors may be a fraction.
  const stories = typed(job, 'stories', '1')
  const whole = Number.isInteger(stories) && stories! > 0
  const content = [
    node('BuildingSummary', [
      node('BuildingConstruction', [
        node('NumberofConditionedFloorsAboveGrade', whole || !(stories! > 0) ? undefined : number(stories)),
        node('NumberofBedrooms', number(bedrooms)),
        node('ConditionedFloorArea', number(typed(job, 'floorArea', 'ft2'))),
        node('NumberofStoriesAboveGrade', whole ? number(stories) : undefined),
        node('BuildingVolume', number(typed(job, 'volume', 'ft3'))),
      ]),
    ]),
    node('Enclosure', [
      node(
        'AirInfiltration',
        houses.flatMap((made) => [measurement(job, made, 'CFM'), measurement(job, made, 'ACH')]),
      ),
    ]),
    node('Systems', [node('HVAC', ducts.map(distribution))]),
  ]
  return { name: 'BuildingDetails', content: content.filter((child) => child !== undefined) }
}
