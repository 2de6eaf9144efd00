/** New jobs, tests, rows and devices, with every cell empty. */
import type {
  Building,
  Device,
  Job,
  Test,
  Tester,
  TypedFan,
  TypedFanReading,
  TypedFieldCheck,
  TypedPoint,
  TypedUnits,
  TypedZone,
} from './schema.ts'

type Subject = Test['sheet']['subject']

const ENCLOSURE_ROLES = ['before', 'after', 'final']

const two = (part: number) => String(part).padStart(2, '0')

/** The day of `now` where the tester stands, as YYYY-MM-DD. */
export function today(now: Date = new Date()): string {
  return `${String(now.getFullYear()).padStart(4, '0')}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

export const emptyTester = (): Tester => ({
  name: '',
  company: '',
  licence: '',
  licenceExpiry: '',
  phone: '',
  email: '',
})

export const emptyPoint = (): TypedPoint => ({ pressure: '', flow: '', devicePressure: '', range: '' })

export const emptyFanReading = (): TypedFanReading => ({ flow: '', devicePressure: '', range: '' })

export const emptyFan = (): TypedFan => ({ name: '', device: '', reading: 'flow', temperature: '', flowPercent: '' })

export const emptyBuilding = (): Building => ({
  street: '',
  unit: '',
  town: '',
  state: '',
  postcode: '',
  permit: '',
  program: '',
  builder: '',
  floorArea: '',
  volume: '',
  enclosureArea: '',
  height: '',
  bedrooms: '',
  stories: '',
  climateZone: '',
  areaSource: '',
  volumePercent: '',
  weatherShieldingFactor: '',
  elevation: '',
})

/** A job without tests; `tester` is copied in, so that a later change of the profile leaves old jobs alone. */
export function emptyJob(units: TypedUnits, tester: Tester = emptyTester()): Job {
  const now = new Date().toISOString()
  return {
    id: crypto.randomUUID(),
    created: now,
    updated: now,
    units: { ...units },
    building: emptyBuilding(),
    tester: { ...tester },
    tests: [],
    converted: {},
  }
}

/** A test of today with one empty row. */
export const emptyTest = (role: string, subject: Subject, units: TypedUnits): Test => ({
  id: crypto.randomUUID(),
  ...blankTest(role, subject, units),
})

/** {@link emptyTest} without an id, which only pages of a secure origin can make. */
export function blankTest(role: string, subject: Subject, units: TypedUnits): Omit<Test, 'id'> {
  return {
    role,
    stage: '',
    date: today(),
    wind: '',
    units: { ...units },
    sheet: {
      subject,
      procedure: 'one-point',
      direction: subject === 'ducts' ? 'pressurize' : 'depressurize',
      reading: 'flow',
      flowBasis: 'indicated',
      baselineBefore: '',
      baselineAfter: '',
      points: [emptyPoint()],
      indoor: '',
      outdoor: '',
      barometer: '',
      exponent: '',
      exponentUncertainty: '',
      pressurePercent: '',
      pressureFloor: '',
      flowPercent: '',
      ductLeakage: 'total',
      airHandlerFlow: '',
      device: '',
    },
    limit: '',
    ownLimit: '',
    onePointFactor: false,
    instrumentFigure: '',
    notes: '',
    converted: {},
  }
}

export const emptyFieldCheck = (): TypedFieldCheck => ({ area: '', pressure: '', flow: '', discharge: '' })

export const emptyZone = (): TypedZone => ({
  name: '',
  house: '',
  houseZone: '',
  zoneOutdoors: '',
  exponent: '',
  closed: '',
  opened: '',
})

export const emptyRange = (): Device['ranges'][number] => ({
  name: '',
  coefficient: '',
  exponent: '',
  minPressure: '',
  maxPressure: '',
})

export function emptyDevice(flowUnit: Device['flowUnit']): Device {
  return {
    id: crypto.randomUUID(),
    name: '',
    serial: '',
    calibrated: '',
    intervalMonths: '',
    flowUnit,
    calibrationDensity: '',
    ranges: [emptyRange()],
  }
}

/** The first role proposed for a new test that the job does not use yet; roles are unique in a job. */
export function nextRole(job: Pick<Job, 'tests'>, subject: Subject): string {
  const used = new Set(job.tests.map((test) => test.role.trim().toLowerCase()))
  const free = (role: string) => !used.has(role)
  const proposed = subject === 'enclosure' ? ENCLOSURE_ROLES.find(free) : undefined
  if (proposed !== undefined) return proposed
  const stem = subject === 'enclosure' ? 'final' : 'duct system'
  let number = subject === 'enclosure' ? 2 : 1
  while (!free(`${stem} ${number}`)) number++
  return `${stem} ${number}`
}
