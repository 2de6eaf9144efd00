/**
 * Units by id and exact conversion between them.
 * Source of the factors: NIST Special Publication 811, Appendix B (foot, inch, Fahrenheit, inch of mercury, inch of water).
 */

/** Of each unit: what it measures, the factor to the base unit as numerator and denominator, and where its zero lies. */
type Unit = readonly [dimension: string, numerator: number, denominator: number, zero?: number]

const foot = 0.3048
const cubicFoot = 0.028316846592

const units = {
  cfm: ['flow', cubicFoot, 60],
  'm3/h': ['flow', 1, 3600],
  'L/s': ['flow', 1, 1000],
  ft: ['length', foot, 1],
  in: ['length', 0.0254, 1],
  m: ['length', 1, 1],
  ft2: ['area', 0.09290304, 1],
  m2: ['area', 1, 1],
  in2: ['area', 0.00064516, 1],
  cm2: ['area', 1, 10_000],
  ft3: ['volume', cubicFoot, 1],
  m3: ['volume', 1, 1],
  Pa: ['pressure', 1, 1],
  hPa: ['pressure', 100, 1],
  inH2O: ['pressure', 249.0889, 1],
  inHg: ['pressure', 3386.389, 1],
  degC: ['temperature', 1, 1],
  degF: ['temperature', 5, 9, 32],
  'kg/m3': ['density', 1, 1],
  '1/h': ['rate', 1, 1],
  '1': ['ratio', 1, 1],
  '%': ['ratio', 1, 100],
  'cfm/ft2': ['flow per area', foot, 60],
  'cfm/100ft2': ['flow per area', foot, 6000],
  'm3/(h.m2)': ['flow per area', 1, 3600],
  'L/(s.m2)': ['flow per area', 1, 1000],
  'in2/100ft2': ['area per area', 0.00064516, 9.290304],
  'cm2/m2': ['area per area', 1, 10_000],
  'cfm/Pa^n': ['flow coefficient', cubicFoot, 60],
  'm3/h/Pa^n': ['flow coefficient', 1, 3600],
  'L/s/Pa^n': ['flow coefficient', 1, 1000],
} as const satisfies Record<string, Unit>

export type UnitId = keyof typeof units

function find(id: string): Unit {
  if (!Object.hasOwn(units, id)) throw new RangeError(`"${id}" is not a known unit.`)
  return units[id as UnitId]
}

/**
 * A value in another unit of the same kind. Temperatures are readings, not differences.
 *
 * @param value number in unit `from`
 * @param from id of a unit
 * @param to id of a unit that measures the same
 * @throws RangeError when a unit is unknown or the two measure different things
 * @example convert(68, 'degF', 'degC') // 20
 */
export function convert(value: number, from: string, to: string): number {
  const [dimension, numerator, denominator, zero = 0] = find(from)
  const [otherDimension, otherNumerator, otherDenominator, otherZero = 0] = find(to)
  if (dimension !== otherDimension) throw new RangeError(`${from} cannot be written in ${to}.`)
  if (from === to) return value
  const base = ((value - zero) * numerator) / denominator
  return (base * otherDenominator) / otherNumerator + otherZero
}

/**
 * The units that a value in `unit` may be written in, itself included.
 *
 * @throws RangeError when the unit is unknown
 * @example unitsLike('in2') // ['ft2', 'm2', 'in2', 'cm2']
 */
export function unitsLike(unit: string): UnitId[] {
  const [dimension] = find(unit)
  return (Object.keys(units) as UnitId[]).filter((id) => units[id][0] === dimension)
}
