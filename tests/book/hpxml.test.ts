import { DOMParser } from '@xmldom/xmldom'
import { describe, expect, test } from 'vitest'
import { hpxmlOf } from '../../lib/book/hpxml/export.ts'
import { readHpxml } from '../../lib/book/hpxml/import.ts'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import type { Job } from '../../lib/job/schema.ts'
import { unitSets } from '../../lib/job/units.ts'
import { misfits } from './hpxml-check.ts'

const now = new Date('2026-02-12T08:00:00Z')
const devices = [demoDevice()]

const parse = (text: string): Document =>
  new DOMParser({
    onError: (level) => {
      if (level !== 'warning') throw new Error(level)
    },
  }).parseFromString(text, 'application/xml') as unknown as Document

const textsOf = (document: Document, name: string): (string | null)[] =>
  Array.from(document.getElementsByTagName(name), (element) => element.textContent)

/** The dates of the measurements of air infiltration, as written. */
const measuredOn = (document: Document): (string | null)[] =>
  Array.from(document.getElementsByTagName('AirInfiltrationMeasurement')).flatMap((one) =>
    Array.from(one.getElementsByTagName('Date'), (each) => each.textContent),
  )

const whatIsRefused = (text: string): string => {
  try {
    readHpxml(text, devices, parse)
  } catch (error) {
    return (error as Error).message
  }
  return 'nothing'
}

const rest = ({ building, tester, units, tests }: Job) => ({
  building,
  tester,
  units,
  tests: tests.map((one) => ({ ...one, id: '' })),
})

function withTexts(text: string): Job {
  const job = demoJob()
  return {
    ...job,
    building: { ...job.building, street: text, unit: text, permit: text },
    tester: { ...job.tester, name: text },
  }
}

describe('a job as HPXML', () => {
  const written = hpxmlOf(demoJob(), devices, now)
  const document = parse(written)

  test('keeps to the order, the required elements, enumerations, numbers and references of version 4.2', () => {
    expect(misfits(document)).toEqual([])
  })

  test('holds the flow at 50 Pa, the air changes and the areas in the units that the standard fixes', () => {
    const job = demoJob()
    const { figures } = reduceTest(job, job.tests[1]!, devices).report!
    expect(textsOf(document, 'UnitofMeasure')).toEqual(['CFM', 'ACH', 'CFM', 'ACH'])
    expect(textsOf(document, 'HousePressure')).toEqual(['50', '50', '50', '50'])
    const [, , flow, changes] = textsOf(document, 'AirLeakage').map(Number)
    expect(flow).toBeCloseTo(figures['flow-50']!.value, 6)
    expect(changes).toBeCloseTo(figures['air-changes-50']!.value, 6)
    // The definition of an air change (ISO 9972): flow times 60 over the volume.
    expect(changes).toBeCloseTo((flow! * 60) / 15_810, 6)
    expect(Number(textsOf(document, 'EffectiveLeakageArea')[1])).toBeCloseTo(
      figures['effective-leakage-area']!.value,
      6,
    )
    expect(textsOf(document, 'InfiltrationVolume')[0]).toBe('15810')
    expect(textsOf(document, 'OutsideTemperature')[0]).toBe('41')
    expect(textsOf(document, 'WindConditions')).toEqual(['normal', 'normal', 'normal', 'normal'])
    expect(textsOf(document, 'TotalOrToOutside')).toEqual(['total'])
  })

  test('is the same house in SI', () => {
    const ip = demoJob()
    const si: Job = { ...ip, units: unitSets.SI, building: { ...ip.building, volume: String(15_810 * 0.3048 ** 3) } }
    const volume = Number(textsOf(parse(hpxmlOf(si, devices, now)), 'InfiltrationVolume')[0])
    // A foot is 0.3048 m exactly (NIST SP 811).
    expect(volume).toBeCloseTo(15_810, 6)
  })

  test('stays well-formed and valid with any text in it', () => {
    for (const text of ['<b>&"\u0000\uD800 ]]>', 'a\r\nb', '', ' ', 'Halvorsen', '<!DOCTYPE x>']) {
      const file = hpxmlOf(withTexts(text), devices, now)
      expect([text, misfits(parse(file))]).toEqual([text, []])
    }
  })

  test('of an empty job is valid too', () => {
    expect(misfits(parse(hpxmlOf({ ...demoJob(), tests: [] }, devices, now)))).toEqual([])
  })
})

test.each([
  ['2026-02-31', []],
  ['2025-02-29', []],
  ['2026-13-01', []],
  ['2024-02-29', ['2024-02-29']],
])('the date %s is written only if a calendar has it (XML Schema part 2, date)', (date, written) => {
  const job = demoJob()
  for (const one of job.tests) one.date = date
  const document = parse(hpxmlOf(job, devices, now))
  expect(textsOf(document, 'AirInfiltrationMeasurement').length).toBeGreaterThan(0)
  expect([...new Set(measuredOn(document))]).toEqual(written)
})

test.each([
  // NumberofStoriesAboveGrade is an IntegerGreaterThanZero, the floors a double (HPXMLBaseElements.xsd of the schema).
  ['2', ['2'], []],
  ['1.5', [], ['1.5']],
  ['0', [], []],
  ['', [], []],
])('%s stories are written where the schema has a place for them, and come back', (stories, whole, floors) => {
  const job = demoJob()
  const text = hpxmlOf({ ...job, building: { ...job.building, stories } }, devices, now)
  const document = parse(text)
  expect(misfits(document)).toEqual([])
  expect(textsOf(document, 'NumberofStoriesAboveGrade')).toEqual(whole)
  expect(textsOf(document, 'NumberofConditionedFloorsAboveGrade')).toEqual(floors)
  const bare = text.replaceAll(/ *<extension>[\s\S]*?<\/extension>\n/g, '')
  expect(readHpxml(bare, devices, parse)[0]!.job.building.stories).toBe([...whole, ...floors].join(''))
})

describe('what the check of a file finds', () => {
  const written = hpxmlOf(demoJob(), devices, now)
  const found = (from: RegExp | string, to: string): string => {
    const changed = written.replace(from, to)
    expect(changed).not.toBe(written)
    return misfits(parse(changed))
      .map(({ path, message }) => `${path.split('/').at(-1)} ${message}`)
      .join('; ')
  }

  test('in order, required elements, enumerations, numbers, ids and references', () => {
    expect(
      found(/( *<HousePressure>50<\/HousePressure>\n)( *<BuildingAirLeakage>[\s\S]*?<\/BuildingAirLeakage>\n)/, '$2$1'),
    ).toBe('HousePressure stands after BuildingAirLeakage, which it must precede')
    expect(found(/ *<Transaction>.*\n/, '')).toBe('Transaction is missing')
    expect(found('>normal<', '>breezy<')).toBe('WindConditions “breezy” is none of: windy, normal')
    expect(found('<HousePressure>50<', '<HousePressure>0<')).toBe('HousePressure 0 is not more than 0')
    expect(found('<AirLeakage>', '<AirLeakage>x')).toMatch(/^AirLeakage “x.*” is not a number$/)
    expect(found('idref="tester"', 'idref="nobody"')).toBe(
      'IndividualConductingTest idref nobody names nothing in the file',
    )
    expect(found('id="site"', 'id="building"')).toBe('SiteID id building stands twice')
    expect(found('<SiteID', '<Colour/><SiteID')).toBe('Colour is not an element that may stand here')
  })
})

describe('a job from HPXML', () => {
  test('comes back whole from what was written of it, as a new job', () => {
    const job = demoJob()
    const [found] = readHpxml(hpxmlOf(job, devices, now), devices, parse)
    expect(found!.left).toEqual([])
    expect(found!.job.id).not.toBe(job.id)
    expect(rest(found!.job)).toEqual(rest(job))
  })

  test('keeps every element of the standard when nothing else is in the file', () => {
    const text = hpxmlOf(demoJob(), devices, now).replaceAll(/ *<extension>[\s\S]*?<\/extension>\n/g, '')
    const [found] = readHpxml(text, devices, parse)
    expect(found!.left).toEqual([])
    const again = hpxmlOf(found!.job, devices, now)
    expect(misfits(parse(again))).toEqual([])
    const kept = [
      'Date',
      'OutsideTemperature',
      'WindConditions',
      'TypeOfBlowerDoorTest',
      'HousePressure',
      'UnitofMeasure',
      'InfiltrationVolume',
      'InfiltrationHeight',
      'Units',
      'TotalOrToOutside',
      'Address1',
      'CityMunicipality',
      'StateCode',
      'NumberofBedrooms',
      'ConditionedFloorArea',
      'NumberofStoriesAboveGrade',
      'FirstName',
      'LastName',
      'BusinessName',
      'EventType',
      'TelephoneNumber',
      'EmailAddress',
    ]
    for (const name of kept)
      expect([name, ...textsOf(parse(again), name)]).toEqual([name, ...textsOf(parse(text), name)])
    for (const name of ['AirLeakage', 'Value']) {
      const [before, after] = [textsOf(parse(text), name).map(Number), textsOf(parse(again), name).map(Number)]
      expect(after).toHaveLength(before.length)
      after.forEach((value, at) => expect(value / before[at]!).toBeCloseTo(1, 9))
    }
  })

  test('takes the results when readings in the file no longer lead to them, and says so', () => {
    const text = hpxmlOf(demoJob(), devices, now).replace(/<AirLeakage>[\d.]+</, '<AirLeakage>1000<')
    const [found] = readHpxml(text, devices, parse)
    expect(found!.left.join()).toContain('do not lead to its results')
    expect(found!.job.tests[0]!.sheet.points[0]!.flow).toBe('1000')
  })

  test('reads the shape of a published example of the standard', () => {
    // Elements as in the example file "audit.xml" published with the schema; names invented.
    const text = `<HPXML xmlns="http://hpxmlonline.com/2023/09" schemaVersion="4.1"><XMLTransactionHeaderInformation><XMLType/><XMLGeneratedBy>x</XMLGeneratedBy><CreatedDateAndTime>2014-10-07T20:25:12</CreatedDateAndTime><Transaction>create</Transaction></XMLTransactionHeaderInformation><SoftwareInfo/><Building><BuildingID id="b"/><Site><SiteID id="s"/><Address><Address1>14 Tannery Row</Address1></Address></Site><ProjectStatus><EventType>audit</EventType></ProjectStatus><BuildingDetails><BuildingSummary><BuildingConstruction><ConditionedFloorArea>2400</ConditionedFloorArea><BuildingVolume>19200</BuildingVolume></BuildingConstruction></BuildingSummary><Enclosure><AirInfiltration><AirInfiltrationMeasurement><SystemIdentifier id="m"/><HousePressure>50</HousePressure><BuildingAirLeakage><UnitofMeasure>CFM</UnitofMeasure><AirLeakage>1300</AirLeakage></BuildingAirLeakage></AirInfiltrationMeasurement><AirInfiltrationMeasurement><SystemIdentifier id="n"/><BuildingAirLeakage><UnitofMeasure>ACHnatural</UnitofMeasure><AirLeakage>0.3</AirLeakage></BuildingAirLeakage></AirInfiltrationMeasurement></AirInfiltration></Enclosure><Systems><HVAC><HVACDistribution><SystemIdentifier id="d"/><DistributionSystemType><AirDistribution><DuctLeakageMeasurement><DuctLeakage><Units>CFM25</Units><Value>123</Value></DuctLeakage></DuctLeakageMeasurement></AirDistribution></DistributionSystemType></HVACDistribution></HVAC></Systems></BuildingDetails></Building></HPXML>`
    const [found] = readHpxml(text, [], parse)
    expect(found!.lines).toEqual([
      'Test “before” of the enclosure, 1300 at -50 Pa.',
      'Test “duct system 1” of the ducts, 123 at 25 Pa.',
    ])
    expect(found!.left).toEqual(['Measurement “n” is in “ACHnatural”, which is no reading of a test.'])
    const [house] = found!.job.tests.map((one) => reduceTest(found!.job, one, []).report!.figures)
    expect(house!['flow-50']!.value).toBeCloseTo(1300, 9)
    // 1300 × 60 / 19,200, by hand.
    expect(house!['air-changes-50']!.value).toBeCloseTo(4.0625, 9)
  })
})

describe('a file that is no HPXML', () => {
  const written = hpxmlOf(demoJob(), devices, now)
  test.each([
    [
      'entities',
      written.replace('<HPXML', '<!DOCTYPE HPXML [<!ENTITY a "aaaa">]>\n<HPXML'),
      'declares a document type or entities',
    ],
    ['another version', written.replace('"4.2"', '"3.0"'), 'HPXML in version “3.0”'],
    [
      'another namespace',
      written.replace('2023/09', '2014/6'),
      'says that it is HPXML 4.2, but the namespace of its elements is “http://hpxmlonline.com/2014/6”, where that version has “http://hpxmlonline.com/2023/09”',
    ],
    ['no namespace', written.replace(/ xmlns="[^"]*"/, ''), 'the namespace of its elements is none'],
    ['cut off', written.slice(0, 2000), 'not well-formed'],
    ['empty', '', 'not well-formed'],
    ['JSON', '{"a":1}', 'not well-formed'],
    ['a page', '<html><body>x</body></html>', 'begins with “html”'],
    ['no building', `<HPXML xmlns="http://hpxmlonline.com/2023/09" schemaVersion="4.2"/>`, 'no building'],
    ['huge', `${written}${' '.repeat(4_000_001)}`, 'too large'],
  ])('%s: refused with a sentence', (_, text, sentence) => {
    const message = whatIsRefused(text)
    expect(message).toContain(sentence)
    expect(message).toMatch(/[.]$/)
  })

  test('numbers that are none, negative or without end come in as nothing', () => {
    for (const value of ['-5', 'NaN', 'Infinity', '1e999', '', '<i/>']) {
      const text = written
        .replaceAll(/ *<extension>[\s\S]*?<\/extension>\n/g, '')
        .replaceAll(/<AirLeakage>[^<]*</g, `<AirLeakage>${value}<`)
      const [found] = readHpxml(text, devices, parse)
      expect(found!.job.tests.map(({ role }) => role)).toEqual(['duct system 1'])
    }
  })
})

/** A file with so many measurements of a unit. */
function manyMeasured(unit: string): string {
  const one = (id: number) =>
    `<AirInfiltrationMeasurement><SystemIdentifier id="m${id}"/><HousePressure>${50 + id / 1e4}</HousePressure><BuildingAirLeakage><UnitofMeasure>${unit}</UnitofMeasure><AirLeakage>${1000 + id}</AirLeakage></BuildingAirLeakage></AirInfiltrationMeasurement>`
  const all = Array.from({ length: 3000 }, (_, id) => one(id)).join('')
  return `<HPXML xmlns="http://hpxmlonline.com/2023/09" schemaVersion="4.2"><Building><BuildingID id="b"/><BuildingDetails><Enclosure><AirInfiltration>${all}</AirInfiltration></Enclosure></BuildingDetails></Building></HPXML>`
}

test('of thousands of measurements a few sentences say what stays in the file, and 50 tests come in', () => {
  const [found] = readHpxml(manyMeasured('CFM'), [], parse)
  expect(found!.job.tests).toHaveLength(50)
  expect(found!.left).toEqual(['Only the first 50 tests of the building come in.'])
  const [none] = readHpxml(manyMeasured('ACHnatural'), [], parse)
  expect(none!.left).toHaveLength(21)
  expect(none!.left.at(-1)).toBe('and 2981 more.')
})

test('the factor of 1.1 stands in the file only beside figures that it multiplied', () => {
  const demo = demoJob()
  const on = (change: Partial<Job['tests'][number]['sheet']>) => {
    const tests = demo.tests.map((one) => ({ ...one, onePointFactor: true, sheet: { ...one.sheet, ...change } }))
    return textsOf(parse(hpxmlOf({ ...demo, tests }, devices, now)), 'OnePointFactor')
  }
  const houses = demo.tests.filter(({ sheet }) => sheet.subject === 'enclosure').length
  expect(on({ procedure: 'one-point' })).toEqual(Array.from({ length: houses }, () => '1.1'))
  expect(on({ procedure: 'astm-e779' })).toEqual([])
})
