/**
 * Published limits, as data. Codes are amended by states, counties and cities, so each limit carries its edition, its
 * clause and how sure we are of both, and the user can always put his own limit in its place.
 *
 * Sources: the editions of the International Energy Conservation Code (IECC) named in each row; the air-leakage test
 * protocol of the U.S. Army Corps of Engineers. 'read' rows were read in public copies, state adoptions or guides;
 * 'from memory' rows were not, or their clause was not.
 */
import type { Limit } from './schema.ts'
import { say } from '../words/say.ts'

export const CAUTION = say`Check the edition your authority enforces, and its local amendments.`

const common = { comparison: '<=', confidence: 'read', checked: '2026-11', caution: CAUTION } as const

const airChanges = { ...common, subject: 'enclosure', figure: 'air-changes-50', unit: '1/h' } as const
const perArea50 = { ...common, subject: 'enclosure', figure: 'flow-50-per-enclosure-area', unit: 'cfm/ft2' } as const
const perArea75 = { ...common, subject: 'enclosure', figure: 'flow-75-per-enclosure-area', unit: 'cfm/ft2' } as const
const ducts = {
  ...common,
  subject: 'ducts',
  figure: 'duct-flow-25-per-floor-area',
  unit: 'cfm/100ft2',
} as const

const final = ['final', 'existing'] as const

const enclosure2009: Limit = {
  ...airChanges,
  id: 'iecc-2009-air-changes',
  title: say`IECC 2009, house: less than 7 ACH50`,
  edition: 'IECC 2009',
  clause: '402.4.2.1',
  value: 7,
  comparison: '<',
  condition: say`testing option`,
}

const enclosure2012To2018 = ['2018', '2015', '2012'].flatMap((year): Limit[] => [
  {
    ...airChanges,
    id: `iecc-${year}-air-changes-zones-1-2`,
    title: say`IECC ${year}, house, zones 1 and 2: 5 ACH50`,
    edition: `IECC ${year}`,
    clause: 'R402.4.1.2',
    value: 5,
    climateZones: [1, 2],
  },
  {
    ...airChanges,
    id: `iecc-${year}-air-changes-zones-3-8`,
    title: say`IECC ${year}, house, zones 3 to 8: 3 ACH50`,
    edition: `IECC ${year}`,
    clause: 'R402.4.1.2',
    value: 3,
    climateZones: [3, 4, 5, 6, 7, 8],
  },
])

const enclosure2021: Limit[] = [
  {
    ...airChanges,
    id: 'iecc-2021-air-changes-prescriptive-zones-0-2',
    title: say`IECC 2021, house, prescriptive, zones 0 to 2: 5.0 ACH50`,
    edition: 'IECC 2021',
    clause: 'R402.4.1.3',
    value: 5,
    climateZones: [0, 1, 2],
    condition: say`prescriptive path`,
  },
  {
    ...airChanges,
    id: 'iecc-2021-air-changes-prescriptive-zones-3-8',
    title: say`IECC 2021, house, prescriptive, zones 3 to 8: 3.0 ACH50`,
    edition: 'IECC 2021',
    clause: 'R402.4.1.3',
    value: 3,
    climateZones: [3, 4, 5, 6, 7, 8],
    condition: say`prescriptive path`,
  },
  {
    ...airChanges,
    id: 'iecc-2021-air-changes',
    title: say`IECC 2021, house, any path: 5.0 ACH50`,
    edition: 'IECC 2021',
    clause: 'R402.4.1.2',
    value: 5,
    condition: say`any compliance path`,
  },
  {
    ...perArea50,
    id: 'iecc-2021-per-enclosure-area',
    title: say`IECC 2021, house, any path: 0.28 cfm50/ft² of enclosure`,
    edition: 'IECC 2021',
    clause: 'R402.4.1.2',
    value: 0.28,
    condition: say`any compliance path, per area of the dwelling unit enclosure`,
  },
  {
    ...perArea50,
    id: 'iecc-2021-per-enclosure-area-attached-or-small',
    title: say`IECC 2021, attached or up to 1,500 ft²: 0.30 cfm50/ft² of enclosure`,
    edition: 'IECC 2021',
    clause: say`R402.4.1.2, exception`,
    value: 0.3,
    condition: say`attached dwelling units, or buildings and units of 1,500 ft² or less`,
    confidence: 'from memory',
  },
]

const enclosure2024 = (
  [
    ['zones-0-2', say`zones 0 to 2`, 4, [0, 1, 2], 'from memory'],
    ['zone-3', say`zone 3`, 3, [3], 'from memory'],
    ['zones-4-5', say`zones 4 and 5`, 3, [4, 5], 'read'],
    ['zone-6', say`zone 6`, 2.5, [6], 'read'],
    ['zones-7-8', say`zones 7 and 8`, 2.5, [7, 8], 'from memory'],
  ] as const
).flatMap(([id, zones, value, climateZones, confidence]): Limit[] => [
  {
    ...airChanges,
    id: `iecc-2024-air-changes-${id}`,
    title: say`IECC 2024, house, ${zones}: ${value.toFixed(1)} ACH50`,
    edition: 'IECC 2024',
    clause: 'R402.5.1.3',
    value,
    climateZones: [...climateZones],
    condition: say`prescriptive path`,
    confidence,
  },
])

const ducts2009: Limit[] = [
  {
    ...ducts,
    id: 'iecc-2009-ducts-total',
    title: say`IECC 2009, ducts, finished, total: 12 cfm25 per 100 ft²`,
    edition: 'IECC 2009',
    clause: '403.2.2',
    value: 12,
    leakage: 'total',
    stages: [...final],
    condition: say`finished work, total leakage`,
  },
  {
    ...ducts,
    id: 'iecc-2009-ducts-outside',
    title: say`IECC 2009, ducts, finished, to outside: 8 cfm25 per 100 ft²`,
    edition: 'IECC 2009',
    clause: '403.2.2',
    value: 8,
    leakage: 'outside',
    stages: [...final],
    condition: say`finished work, leakage to outside`,
    confidence: 'from memory',
  },
  {
    ...ducts,
    id: 'iecc-2009-ducts-rough-in',
    title: say`IECC 2009, ducts, rough-in: 6 cfm25 per 100 ft²`,
    edition: 'IECC 2009',
    clause: '403.2.2',
    value: 6,
    leakage: 'total',
    stages: ['rough-in'],
    condition: say`rough-in with the air handler in place`,
  },
  {
    ...ducts,
    id: 'iecc-2009-ducts-rough-in-without-air-handler',
    title: say`IECC 2009, ducts, rough-in without air handler: 4 cfm25 per 100 ft²`,
    edition: 'IECC 2009',
    clause: '403.2.2',
    value: 4,
    leakage: 'total',
    stages: ['rough-in without air handler'],
    condition: say`rough-in without the air handler`,
  },
]

const ductsSince2012 = (
  [
    ['2021', 'R403.3.6', 'read'],
    ['2018', 'R403.3.4', 'read'],
    ['2015', 'R403.3.4', 'read'],
    ['2012', 'R403.2.2', 'from memory'],
  ] as const
).flatMap(([year, clause, confidence]): Limit[] => {
  const row = { ...ducts, edition: `IECC ${year}`, clause, confidence, leakage: 'total' } as const
  return [
    {
      ...row,
      id: `iecc-${year}-ducts-total`,
      title: say`IECC ${year}, ducts, finished, total: 4 cfm25 per 100 ft²`,
      value: 4,
      stages: [...final],
      condition: say`finished work, total leakage`,
    },
    {
      ...row,
      id: `iecc-${year}-ducts-rough-in`,
      title: say`IECC ${year}, ducts, rough-in: 4 cfm25 per 100 ft²`,
      value: 4,
      stages: ['rough-in'],
      condition: say`rough-in with the air handler in place`,
    },
    {
      ...row,
      id: `iecc-${year}-ducts-rough-in-without-air-handler`,
      title: say`IECC ${year}, ducts, rough-in without air handler: 3 cfm25 per 100 ft²`,
      value: 3,
      stages: ['rough-in without air handler'],
      condition: say`rough-in without the air handler`,
    },
  ]
})

const ductsInside2021: Limit = {
  ...ducts,
  id: 'iecc-2021-ducts-inside',
  title: say`IECC 2021, all ducts inside the envelope, total: 8.0 cfm25 per 100 ft²`,
  edition: 'IECC 2021',
  clause: 'R403.3.6',
  value: 8,
  leakage: 'total',
  condition: say`all ducts and air handlers inside the thermal envelope`,
}

const others: Limit[] = [
  {
    ...perArea75,
    id: 'iecc-commercial-per-enclosure-area',
    title: say`IECC commercial, up to 2018: 0.40 cfm75/ft² of enclosure`,
    edition: say`IECC commercial, up to 2018`,
    clause: 'C402.5',
    value: 0.4,
    condition: say`commercial buildings`,
  },
  {
    ...perArea75,
    id: 'army-corps-per-enclosure-area',
    title: say`U.S. Army Corps of Engineers: 0.25 cfm75/ft² of enclosure`,
    edition: say`U.S. Army Corps of Engineers, air leakage test protocol`,
    clause: '',
    value: 0.25,
  },
  {
    ...airChanges,
    id: 'passive-house-air-changes',
    title: say`Passive-house style: 0.6 ACH50`,
    edition: say`Passive-house practice`,
    clause: '',
    value: 0.6,
    confidence: 'from memory',
  },
]

/** Every published limit that is shipped. */
export const publishedLimits: readonly Limit[] = [
  ...enclosure2024,
  ...enclosure2021,
  ...enclosure2012To2018,
  enclosure2009,
  ...ductsSince2012,
  ductsInside2021,
  ...ducts2009,
  ...others,
]
