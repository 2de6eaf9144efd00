/**
 * A job as typed: a building, the tester, and the tests made in that building. Every cell is kept as the text that was
 * typed, so that a half-typed number survives a restart and an audit sees what the person saw.
 */
import * as z from 'zod/mini'
import { limitTermsSchema } from '../limits/schema.ts'

/** A cell's text as typed; 10,000 characters are more than any form control takes. */
const cell = z.string().check(z.maxLength(10_000))

/** The units the cells of a test or building are typed in. */
export const typedUnitsSchema = z.object({
  flow: z.enum(['cfm', 'm3/h', 'L/s']),
  temperature: z.enum(['degF', 'degC']),
  length: z.enum(['ft', 'm']),
  /** Present once a person whose language writes a decimal comma has typed among them. */
  decimal: z.optional(z.enum(['comma'])),
})

export const buildingSchema = z.object({
  street: cell,
  unit: cell,
  town: cell,
  state: cell,
  postcode: cell,
  permit: cell,
  program: cell,
  builder: cell,
  floorArea: cell,
  volume: cell,
  /** Whether the volume is that of the air or that within the outside faces; absent or empty: not said. */
  volumeBasis: z.optional(z.enum(['', 'net', 'gross'])),
  enclosureArea: cell,
  /** Less the lowest floor, as some countries take it; absent or empty: not typed. */
  enclosureAreaWithoutFloor: z.optional(cell),
  height: cell,
  bedrooms: cell,
  stories: cell,
  climateZone: cell,
  /** How areas and volume were obtained. */
  areaSource: z.enum(['', 'plans', 'measured', 'estimated']),
  /** Uncertainty of the volume and areas, percent. */
  volumePercent: cell,
  weatherShieldingFactor: cell,
  elevation: cell,
})

export const testerSchema = z.object({
  name: cell,
  company: cell,
  licence: cell,
  /** ISO date or empty. */
  licenceExpiry: cell,
  phone: cell,
  email: cell,
})

/** What one of several fans showed at a point: its flow, or the pressure at it with the range in use. Empty: it was off. */
export const typedFanReadingSchema = z.object({ flow: cell, devicePressure: cell, range: cell })

/** One reading: either the flow the instrument showed, or the pressure at the device with the range in use. */
export const typedPointSchema = z.object({
  pressure: cell,
  flow: cell,
  devicePressure: cell,
  range: cell,
  /** In the order of the fans of the sheet. */
  fans: z.optional(z.array(typedFanReadingSchema)),
  /** Why the point is not reduced; absent or empty: it is. */
  leftOut: z.optional(cell),
})

/** A field check with a sharp-edged hole; the area in in2 or cm2, as the unit of length goes. */
export const typedFieldCheckSchema = z.object({ area: cell, pressure: cell, flow: cell, discharge: cell })

/** One of several fans that run together, with what is its own. */
export const typedFanSchema = z.object({
  /** Empty: fan 1, fan 2, … */
  name: cell,
  /** The id of a device of the book, or empty. */
  device: cell,
  reading: z.enum(['flow', 'device']),
  /** Of the air that passes it; empty: that of the test. */
  temperature: cell,
  /** Uncertainty of its flow, percent; empty: that of the test. */
  flowPercent: cell,
})

export const typedSheetSchema = z.object({
  subject: z.enum(['enclosure', 'ducts']),
  procedure: z.enum(['one-point', 'two-point', 'astm-e779', 'iso-9972', 'astm-e3158']),
  direction: z.enum(['depressurize', 'pressurize']),
  /**
   * 'flow': the instrument showed a flow; 'device': the pressure at the device was written down; 'fans': several fans ran
   * together, and each point has a reading of each.
   */
  reading: z.enum(['flow', 'device', 'fans']),
  /** Absent: there never were several. */
  fans: z.optional(z.array(typedFanSchema)),
  flowBasis: z.enum(['indicated', 'actual']),
  /** When the flows are corrected for the air; absent: always. */
  corrections: z.optional(z.enum(['always', 'threshold'])),
  /** Several readings may stand in one cell, separated by spaces or semicolons. */
  baselineBefore: cell,
  baselineAfter: cell,
  points: z.array(typedPointSchema),
  indoor: cell,
  outdoor: cell,
  barometer: cell,
  exponent: cell,
  exponentUncertainty: cell,
  pressurePercent: cell,
  pressureFloor: cell,
  flowPercent: cell,
  /** How long a baseline reading and the reading of a point were averaged, s; absent: not said. */
  baselineSeconds: z.optional(cell),
  readingSeconds: z.optional(cell),
  /** Scatter of one pressure reading where the baseline shows none, Pa; absent: by the wind. */
  pressureScatter: z.optional(cell),
  /** How the line of several points is found; absent: least squares. */
  line: z.optional(z.enum(['least-squares', 'weighted'])),
  ductLeakage: z.enum(['total', 'outside']),
  airHandlerFlow: cell,
  /** Floor area that a system of ducts serves; absent or empty: that of the building. */
  servedArea: z.optional(cell),
  /** The id of a device of the book, or empty. */
  device: cell,
  /** Absent: none was made. */
  fieldCheck: z.optional(typedFieldCheckSchema),
})

/** An attic, garage or other zone beside the house, with the pressures and flows that tell how leaky it is. */
export const typedZoneSchema = z.object({
  name: cell,
  /** House to outdoors, Pa; empty: 50. */
  house: cell,
  houseZone: cell,
  zoneOutdoors: cell,
  exponent: cell,
  /** Flow of the house with the zone closed, and with the zone opened to the house. */
  closed: cell,
  opened: cell,
})

/** A number that was converted for display: `text` as typed in `unit`, and the text `shown` in its place. */
export const convertedSchema = z.object({ text: z.string(), unit: z.string(), shown: z.string() })

export const testSchema = z.object({
  id: z.string(),
  /** Unique in its job: before, after, final, duct system 1, … */
  role: cell,
  stage: z.enum(['', 'rough-in', 'rough-in without air handler', 'final', 'existing']),
  /** ISO date. */
  date: cell,
  wind: z.enum(['', 'calm', 'light', 'windy']),
  units: typedUnitsSchema,
  sheet: typedSheetSchema,
  /** The id of the limit to compare with, or empty. */
  limit: cell,
  /** A limit of the user's own, used when `limit` is 'own'. */
  ownLimit: cell,
  /** The id of the figure that the own limit is set on; absent or empty: the usual one of the subject. */
  ownLimitFigure: z.optional(cell),
  /** Name and origin of the kept limit that the own limit was copied from; empty once it is typed over. */
  ownLimitOrigin: z.optional(cell),
  /** What the kept limit is written for; empty once it is typed over. */
  ownLimitTerms: z.optional(limitTermsSchema),
  /** Whether a one-point result is multiplied by 1.1 before comparing and entering. */
  onePointFactor: z.boolean(),
  /** What the instrument itself showed as its result, in units.flow at 50 Pa (ducts: 25 Pa). */
  instrumentFigure: cell,
  notes: cell,
  /** Absent: none was looked at. */
  zones: z.optional(z.array(typedZoneSchema)),
  /** By path in the sheet: what was typed before the units were switched. */
  converted: z.record(z.string(), convertedSchema),
})

export const jobSchema = z.object({
  id: z.string(),
  created: z.string(),
  updated: z.string(),
  demo: z.optional(z.boolean()),
  /** A copy in which nothing was changed yet. */
  copied: z.optional(z.boolean()),
  units: typedUnitsSchema,
  building: buildingSchema,
  tester: testerSchema,
  tests: z.array(testSchema),
  converted: z.record(z.string(), convertedSchema),
})

/** A flow device of the owner's, with the ranges from its own calibration certificate. Numbers as typed. */
export const deviceSchema = z.object({
  id: z.string(),
  name: cell,
  serial: cell,
  calibrated: cell,
  intervalMonths: cell,
  flowUnit: z.enum(['cfm', 'm3/h', 'L/s']),
  calibrationDensity: cell,
  /** As of typed units. */
  decimal: z.optional(z.enum(['comma'])),
  ranges: z.array(z.object({ name: cell, coefficient: cell, exponent: cell, minPressure: cell, maxPressure: cell })),
})

/** A limit of the owner's own, to be copied into tests: from a permit, a program's paper or a local amendment. */
export const keptLimitSchema = z.object({
  id: z.string(),
  name: cell,
  /** Id of the figure it is set on. */
  figure: cell,
  /** As typed, in `unit`. */
  value: cell,
  unit: cell,
  /** Where it stands: paper, edition, clause, date. */
  origin: cell,
  /** The edition or local code that it belongs to; absent or empty: to none. */
  set: z.optional(cell),
  /** What it is written for; absent: at most the value, for any test of its figure. */
  terms: z.optional(limitTermsSchema),
})

export type TypedUnits = z.infer<typeof typedUnitsSchema>
export type Building = z.infer<typeof buildingSchema>
export type Tester = z.infer<typeof testerSchema>
export type TypedPoint = z.infer<typeof typedPointSchema>
export type TypedFan = z.infer<typeof typedFanSchema>
export type TypedFanReading = z.infer<typeof typedFanReadingSchema>
export type TypedFieldCheck = z.infer<typeof typedFieldCheckSchema>
export type TypedZone = z.infer<typeof typedZoneSchema>
export type TypedSheet = z.infer<typeof typedSheetSchema>
export type Test = z.infer<typeof testSchema>
export type Job = z.infer<typeof jobSchema>
export type Device = z.infer<typeof deviceSchema>
export type KeptLimit = z.infer<typeof keptLimitSchema>
