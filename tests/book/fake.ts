/** Invented test objects. */
import type { Binding, FormMap, ReceiptLine } from '../../lib/form/schema.ts'
import type { Device, Job, KeptLimit } from '../../lib/job/schema.ts'
import type { Fill } from '../../lib/book/schema.ts'

const cells = <K extends string>(...names: K[]) => Object.fromEntries(names.map((name) => [name, ''])) as Record<K, ''>

const units: Job['units'] = { flow: 'cfm', temperature: 'degF', length: 'ft' }

export function fakeJob(overrides: Partial<Job> = {}): Job {
  return {
    id: 'job-1',
    created: '2026-01-12T09:00:00.000Z',
    updated: '2026-01-12T09:00:00.000Z',
    units,
    building: {
      ...cells('unit', 'state', 'postcode', 'builder', 'enclosureArea', 'height', 'bedrooms', 'stories', 'climateZone'),
      ...cells('volumePercent', 'weatherShieldingFactor', 'elevation', 'areaSource'),
      street: '14 Tannery Row',
      town: 'Marrowby',
      permit: 'MB-2026-031',
      program: 'LC7-2026-0187',
      floorArea: '1860',
      volume: '15810',
    },
    tester: {
      ...cells('licenceExpiry', 'phone', 'email'),
      name: 'Ines Halvorsen',
      company: 'Bellwether Lane Testing',
      licence: 'T-0442',
    },
    tests: [],
    converted: {},
    ...overrides,
  }
}

export function fakeDevice(overrides: Partial<Device> = {}): Device {
  return {
    id: 'device-1',
    name: 'Fan in the van',
    serial: '0417',
    calibrated: '2025-09-01',
    intervalMonths: '12',
    flowUnit: 'cfm',
    calibrationDensity: '1.2041',
    ranges: [{ name: 'wide', coefficient: '180', exponent: '0.5', minPressure: '25', maxPressure: '300' }],
    ...overrides,
  }
}

export function fakeBinding(id: string, name: string, overrides: Partial<Binding> = {}): Binding {
  return {
    id,
    control: {
      kind: 'text',
      name,
      section: 'Part C',
      attributes: { name: id },
      placeholder: '',
      options: [],
      position: 0,
    },
    source: { from: 'item', item: 'after/flow-50', write: { unit: 'cfm', decimals: 0 } },
    ...overrides,
  }
}

export function fakeMap(overrides: Partial<FormMap> = {}): FormMap {
  return {
    id: 'map-1',
    name: 'LC-7 rebate, part C',
    version: 1,
    created: '2026-01-12T09:00:00.000Z',
    updated: '2026-01-12T09:00:00.000Z',
    address: { origin: 'https://comfort.larchcounty.example', path: '/apply/*/part-c' },
    bindings: [fakeBinding('flow', 'CFM at 50 Pa')],
    ...overrides,
  }
}

export function fakeFill(id: string, overrides: Partial<Fill> = {}): Fill {
  return {
    id,
    started: '2026-02-11T16:42:00.000Z',
    kind: 'fill',
    job: { id: 'job-1', name: '14 Tannery Row' },
    map: { id: 'map-1', name: 'LC-7 rebate, part C', version: 1 },
    page: { origin: 'https://comfort.larchcounty.example', path: '/apply/187/part-c', title: 'Form LC-7' },
    planned: [
      { binding: 'volume', control: 'Conditioned volume', section: 'Part A', source: 'volume', text: '15810' },
      { binding: 'flow', control: 'CFM at 50 Pa', section: 'Part C', source: 'after: CFM50', text: '754' },
      { binding: 'report', control: 'Signed test report', section: 'Part D', source: 'report', text: 'after.pdf' },
    ],
    ...overrides,
  }
}

export function fakeLine(binding: string, overrides: Partial<ReceiptLine> = {}): ReceiptLine {
  return {
    binding,
    control: 'CFM at 50 Pa',
    section: 'Part C',
    source: 'after: CFM50',
    intended: '754',
    before: '',
    readBack: '754',
    outcome: 'entered',
    note: '',
    ...overrides,
  }
}

export const context = { engine: '0.1.0', tab: 7 }

export const fakeLimit = (overrides: Partial<KeptLimit> = {}): KeptLimit => ({
  id: 'l',
  name: 'Larch County',
  figure: 'air-changes-50',
  value: '3',
  unit: '1/h',
  origin: '',
  ...overrides,
})
