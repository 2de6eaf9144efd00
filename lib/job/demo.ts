/** An invented job to look around with. No such place, person or company is meant. */
import { emptyDevice, emptyJob, emptyPoint, emptyTest, emptyTester } from './empty.ts'
import type { Device, Job, Test, Tester, TypedPoint } from './schema.ts'
import { writesComma } from '../units/comma.ts'
import { unitSets } from './units.ts'

const DEVICE = 'demo-device'
const KEPT = '2026-02-11T16:31:00.000Z'

export const demoTester = (): Tester => ({
  ...emptyTester(),
  name: 'Ines Halvorsen',
  company: 'Bellwether Lane Testing',
  licence: 'T-0442',
  licenceExpiry: '2027-06-30',
  phone: '555-0142',
  email: 'ines@bellwether.example',
})

/** A flow device with three ranges; the constants are invented too. */
export const demoDevice = (): Device => ({
  ...emptyDevice('cfm'),
  id: DEVICE,
  name: 'Fan 2',
  serial: 'F2-0031',
  calibrated: '2025-02-04',
  intervalMonths: '12',
  calibrationDensity: '1.2041',
  ranges: [
    { name: 'wide', coefficient: '230', exponent: '0.5', minPressure: '10', maxPressure: '400' },
    { name: 'middle', coefficient: '85', exponent: '0.5', minPressure: '10', maxPressure: '400' },
    { name: 'narrow', coefficient: '22', exponent: '0.5', minPressure: '10', maxPressure: '400' },
  ],
})

/** With its thousands parted, unless that could be taken for a decimal. */
const parted = (text: string): string => (writesComma() ? text.replace(',', '') : text)

const point = (pressure: string, flow: string, range: string): TypedPoint => ({
  ...emptyPoint(),
  pressure,
  flow,
  range,
})

function enclosure(role: string, date: string, stage: Test['stage'], points: TypedPoint[]): Test {
  const test = emptyTest(role, 'enclosure', unitSets.IP)
  return {
    ...test,
    id: `demo-${role}`,
    date,
    stage,
    limit: 'iecc-2021-air-changes-prescriptive-zones-3-8',
    sheet: { ...test.sheet, points, indoor: '68', outdoor: '41', device: DEVICE },
  }
}

export function demoJob(): Job {
  const job = emptyJob(unitSets.IP, demoTester())
  const before = enclosure('before', '2026-01-12', 'existing', [point('-50.8', '1501', 'wide')])
  const after = enclosure('after', '2026-02-11', 'final', [
    point('-51.3', '790', 'middle'),
    point('-38.7', '658', 'middle'),
    point('-26.2', '502', 'middle'),
  ])
  const ducts = emptyTest('duct system 1', 'ducts', unitSets.IP)
  return {
    ...job,
    id: 'demo-job',
    created: KEPT,
    updated: KEPT,
    demo: true,
    building: {
      ...job.building,
      street: '14 Tannery Row',
      town: 'Marrowby',
      state: 'Larch County',
      permit: 'MB-2025-1183',
      program: 'LC7-2026-0187',
      builder: 'Old Tannery Joinery',
      floorArea: parted('1,860'),
      volume: parted('15,810'),
      enclosureArea: parted('4,420'),
      height: '17',
      bedrooms: '3',
      stories: '2',
      climateZone: '5A',
      areaSource: 'plans',
      volumePercent: '3',
      elevation: '620',
    },
    tests: [
      {
        ...before,
        wind: 'light',
        sheet: { ...before.sheet, baselineBefore: '-1.4', baselineAfter: '-1.0' },
      },
      {
        ...after,
        wind: 'calm',
        instrumentFigure: '785',
        sheet: { ...after.sheet, baselineBefore: '-1.2', baselineAfter: '-0.8' },
      },
      {
        ...ducts,
        id: 'demo-duct system 1',
        date: '2026-02-11',
        stage: 'final',
        limit: 'iecc-2021-ducts-total',
        sheet: {
          ...ducts.sheet,
          points: [point('25.4', '71', 'narrow')],
          baselineBefore: '0.1',
          baselineAfter: '0.1',
          indoor: '68',
          outdoor: '66',
          airHandlerFlow: parted('1,050'),
          device: DEVICE,
        },
      },
    ],
  }
}
