/** A sheet: the readings of one test as typed on site, as numbers with their units. Pressure is always in Pa. */
import * as z from 'zod/mini'

const number = z.number()
const optional = z.optional(number)

/** Units of the numbers; areas and volumes are the powers of `length`. */
export const unitsSchema = z.object({
  flow: z.enum(['cfm', 'm3/h', 'L/s']),
  temperature: z.enum(['degF', 'degC']),
  length: z.enum(['ft', 'm']),
})

/**
 * What one of several fans brought to the flow of a point, in units.flow. `name` tells it, and the range it ran in, from
 * others, whose errors are other ones; `percent`: the uncertainty of its flow, ± at 95 %, that of the instrument when left
 * out; `values`: the numbers that its flow was worked out from, for the working.
 */
export const fanSchema = z.object({ name: z.string(), flow: number, percent: optional, values: z.optional(z.string()) })

/**
 * A flow shown by the instrument, or the pressure at the device with the range in use. `fans`: of a flow that is a sum,
 * its parts.
 */
export const pointSchema = z.union([
  z.object({ pressure: number, flow: number, fans: z.optional(z.array(fanSchema)) }),
  z.object({ pressure: number, devicePressure: number, range: z.string() }),
])

/** `flow = coefficient × pressure^exponent`, in units.flow and Pa; the pressures are what the range is calibrated for. */
export const rangeSchema = z.object({
  coefficient: number,
  exponent: number,
  minPressure: optional,
  maxPressure: optional,
})

export const sheetSchema = z.object({
  subject: z.enum(['enclosure', 'ducts']),
  /** 'two-point': about 50 and 12.5 Pa, ASTM E1827; 'astm-e3158': large buildings, for a result at 75 Pa. */
  procedure: z.enum(['one-point', 'two-point', 'astm-e779', 'iso-9972', 'astm-e3158']),
  direction: z.enum(['depressurize', 'pressurize']),
  units: unitsSchema,
  /** Readings with the device closed, before and after the test. Either may be empty. */
  baseline: z.object({ before: z.array(number), after: z.array(number) }),
  points: z.array(pointSchema),
  /** 'indicated': flows are at the device's calibration density; 'actual': at the density of the air in the device. */
  flowBasis: z.enum(['indicated', 'actual']),
  /** `calibrationDensity` in kg/m3, 1.2041 when left out. */
  device: z.optional(z.object({ ranges: z.record(z.string(), rangeSchema), calibrationDensity: optional })),
  /**
   * Temperatures, elevation and barometer (station pressure, Pa). Left out: no density correction. For ducts, `indoor` is
   * the air inside the ducts and `outdoor` the air around the device.
   */
  air: z.optional(z.object({ indoor: number, outdoor: number, elevation: optional, barometer: optional })),
  /**
   * 'threshold': corrected only above 5,000 ft or beyond a difference of 30 degF, either bringing both corrections, as
   * ANSI/RESNET/ICC 380 has it (from memory). 'always' when left out.
   */
  corrections: z.optional(z.enum(['always', 'threshold'])),
  /** One-point only: assumed exponent and its standard uncertainty. */
  exponent: optional,
  exponentUncertainty: optional,
  /** What the certificate gives as ± at 95 %: percent of pressure but at least a floor in Pa, and percent of flow. */
  instrument: z.optional(z.object({ pressurePercent: number, pressureFloor: number, flowPercent: number })),
  /** `volumePercent`: ± at 95 % of the volume and of the areas; `enclosureAreaWithoutFloor`: less the lowest floor. */
  building: z.optional(
    z.object({
      volume: optional,
      floorArea: optional,
      enclosureArea: optional,
      enclosureAreaWithoutFloor: optional,
      height: optional,
      bedrooms: optional,
      stories: optional,
      volumePercent: optional,
    }),
  ),
  /** `airHandlerFlow` in units.flow. */
  duct: z.optional(z.object({ leakage: z.enum(['total', 'outside']), airHandlerFlow: optional })),
  weatherShieldingFactor: optional,
  /** How long each baseline reading and each reading of a point was averaged, s: scatter falls with the root of the time. */
  averaging: z.optional(z.object({ baseline: optional, reading: optional })),
  /** Standard deviation of one pressure reading where the baseline shows none, Pa; 0.2 when left out. */
  pressureScatter: optional,
  /** How the line of several points is found; 'least-squares' when left out. */
  line: z.optional(z.enum(['least-squares', 'weighted'])),
  /**
   * A field check with a sharp-edged hole: its area (in2 with feet, cm2 with metres), the pressure across it, the flow that
   * was read through it (open less closed), and its discharge coefficient, 0.611 when left out.
   */
  fieldCheck: z.optional(z.object({ area: number, pressure: number, flow: number, discharge: optional })),
})

export type Units = z.infer<typeof unitsSchema>
export type Fan = z.infer<typeof fanSchema>
export type Point = z.infer<typeof pointSchema>
export type Range = z.infer<typeof rangeSchema>
export type Sheet = z.infer<typeof sheetSchema>
