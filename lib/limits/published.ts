/**
 * Published limits, as data. Codes are amended by states, counties and cities, so each limit carries its edition, its
 * clause and how sure we are of both, and the user can always put his own limit in its place.
 *
 * Sources: the editions of the International Energy Conservation Code (IECC) named in each row; the air-leakage test
 * protocol of the U.S. Army Corps of Engineers; the German law on the energy of buildings; the French thermal rules; the
 * English building regulations. 'read' rows were read in public copies, state adoptions or guides; 'secondary' rows in two
 * or more texts that cite them; 'from memory' rows were not, or their clause was not. Which protocols ask for a line through
 * several points, for both directions or for the one-point factor is from memory.
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

/** The stages of new work; codes of new work say nothing of ducts that were there before. */
const final = ['final'] as const
const newWork = ['rough-in', 'rough-in without air handler', 'final'] as const

/** ASTM E779 or another line through several points. */
const severalPoints = ['astm-e779', 'iso-9972', 'astm-e3158'] as const

/** The editions that name ANSI/RESNET/ICC 380, which may ask for a one-point result to be multiplied. */
const factored = { onePointFactor: true } as const

const enclosure2009: Limit = {
  ...airChanges,
  id: 'iecc-2009-air-changes',
  title: say`IECC 2009, house: less than 7.0 ACH50`,
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
    title: say`IECC ${year}, house, zones 1 and 2: 5.0 ACH50`,
    edition: `IECC ${year}`,
    clause: 'R402.4.1.2',
    value: 5,
    climateZones: [1, 2],
    ...(year === '2018' && factored),
  },
  {
    ...airChanges,
    id: `iecc-${year}-air-changes-zones-3-8`,
    title: say`IECC ${year}, house, zones 3 to 8: 3.0 ACH50`,
    edition: `IECC ${year}`,
    clause: 'R402.4.1.2',
    value: 3,
    climateZones: [3, 4, 5, 6, 7, 8],
    ...(year === '2018' && factored),
  },
])

const enclosure2021: Limit[] = [
  {
    ...airChanges,
    ...factored,
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
    ...factored,
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
    ...factored,
    id: 'iecc-2021-air-changes',
    title: say`IECC 2021, house, any path: 5.0 ACH50`,
    edition: 'IECC 2021',
    clause: 'R402.4.1.2',
    value: 5,
    condition: say`any compliance path`,
  },
  {
    ...perArea50,
    ...factored,
    id: 'iecc-2021-per-enclosure-area',
    title: say`IECC 2021, house, any path: 0.28 cfm50/ft² of enclosure`,
    edition: 'IECC 2021',
    clause: 'R402.4.1.2',
    value: 0.28,
    condition: say`any compliance path, per area of the dwelling unit enclosure`,
  },
  {
    ...perArea50,
    ...factored,
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
    ...factored,
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
    title: say`IECC 2009, ducts, finished, total: 12.0 cfm25 per 100 ft²`,
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
    title: say`IECC 2009, ducts, finished, to outside: 8.0 cfm25 per 100 ft²`,
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
    title: say`IECC 2009, ducts, rough-in: 6.0 cfm25 per 100 ft²`,
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
    title: say`IECC 2009, ducts, rough-in without air handler: 4.0 cfm25 per 100 ft²`,
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
      title: say`IECC ${year}, ducts, finished, total: 4.0 cfm25 per 100 ft²`,
      value: 4,
      stages: [...final],
      condition: say`finished work, total leakage`,
    },
    {
      ...row,
      id: `iecc-${year}-ducts-rough-in`,
      title: say`IECC ${year}, ducts, rough-in: 4.0 cfm25 per 100 ft²`,
      value: 4,
      stages: ['rough-in'],
      condition: say`rough-in with the air handler in place`,
    },
    {
      ...row,
      id: `iecc-${year}-ducts-rough-in-without-air-handler`,
      title: say`IECC ${year}, ducts, rough-in without air handler: 3.0 cfm25 per 100 ft²`,
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
  stages: [...newWork],
  condition: say`all ducts and air handlers inside the thermal envelope`,
}

const commercial = { ...perArea75, procedures: [...severalPoints] }

const others: Limit[] = [
  {
    ...commercial,
    id: 'iecc-2024-commercial-per-enclosure-area',
    title: say`IECC 2024, commercial: 0.35 cfm75/ft² of enclosure`,
    edition: say`IECC 2024, commercial`,
    clause: '',
    value: 0.35,
    condition: say`commercial buildings`,
    confidence: 'secondary',
  },
  {
    ...commercial,
    id: 'iecc-2021-commercial-per-enclosure-area',
    title: say`IECC 2021, commercial: 0.40 cfm75/ft² of enclosure`,
    edition: say`IECC 2021, commercial`,
    clause: 'C402.5.3',
    value: 0.4,
    condition: say`commercial buildings; from above 0.40 up to 0.60 it is met after a diagnostic evaluation and sealing (exception)`,
  },
  {
    ...commercial,
    id: 'iecc-commercial-per-enclosure-area',
    title: say`IECC commercial, 2012 to 2018: 0.40 cfm75/ft² of enclosure`,
    edition: say`IECC commercial, 2012 to 2018`,
    clause: 'C402.5',
    value: 0.4,
    condition: say`commercial buildings`,
  },
  {
    ...commercial,
    id: 'army-corps-per-enclosure-area',
    title: say`U.S. Army Corps of Engineers: 0.25 cfm75/ft² of enclosure`,
    edition: say`U.S. Army Corps of Engineers, air leakage test protocol`,
    clause: '',
    value: 0.25,
    directions: 'mean',
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

/** After DIN EN ISO 9972:2018-12, national annex NA: both directions, each of which has to hold. */
const germany = [
  ['', say`without ventilation system`, 3, 4.5],
  ['-ventilated', say`with a ventilation system`, 1.5, 2.5],
] as const

const germanRow = {
  edition: say`Gebäudeenergiegesetz (Germany)`,
  clause: '§ 26',
  confidence: 'secondary',
  procedures: ['iso-9972'],
  directions: 'each',
} satisfies Partial<Limit>

const germanAirChanges = ([id, condition, value]: (typeof germany)[number]): Limit => ({
  ...airChanges,
  ...germanRow,
  id: `germany-air-changes${id}`,
  title: say`Germany, GEG, ${condition}: ${value.toFixed(1)} air changes per hour at 50 Pa`,
  value,
  condition,
  volume: 'net',
  size: { most: 1500 },
})

const germanPerArea = ([id, condition, , value]: (typeof germany)[number]): Limit => ({
  ...perArea50,
  ...germanRow,
  unit: 'm3/(h.m2)',
  id: `germany-per-enclosure-area${id}`,
  title: say`Germany, GEG, above 1,500 m³, ${condition}: ${value.toFixed(1)} m³/(h·m²) at 50 Pa`,
  value,
  condition,
  size: { above: 1500 },
})

const french = (id: string, condition: string, value: number): Limit => ({
  ...common,
  subject: 'enclosure',
  figure: 'flow-4-per-enclosure-area-without-floor',
  unit: 'm3/(h.m2)',
  id: `france-${id}`,
  title: say`France, RT 2012, ${condition}: ${value.toFixed(1)} m³/(h·m²) at 4 Pa`,
  edition: say`RT 2012 (France)`,
  clause: '',
  value,
  procedures: ['iso-9972'],
  condition,
})

const elsewhere: Limit[] = [
  ...germany.map(germanAirChanges),
  ...germany.map(germanPerArea),
  french('house', say`houses`, 0.6),
  french('flats', say`blocks of flats`, 1),
  {
    ...perArea50,
    id: 'england-2021-per-enclosure-area',
    title: say`England, Part L 2021: 8.0 m³/(h·m²) at 50 Pa`,
    edition: say`Part L 2021 (England)`,
    clause: '',
    unit: 'm3/(h.m2)',
    value: 8,
    condition: say`limiting value`,
    confidence: 'secondary',
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
  ...elsewhere,
]
