/** Density and viscosity of dry air. */

/** Density of air at 20 degC and 101,325 Pa, kg/m3. */
export const referenceDensity = 1.2041

/**
 * Density of dry air by elevation, in the form of the appendix of ASTM E779 (from memory).
 *
 * @param temperature degC
 * @param elevation m above sea level
 * @returns kg/m3
 * @example densityAt(20, 0) // 1.2041
 */
export function densityAt(temperature: number, elevation: number): number {
  return referenceDensity * (1 - (0.0065 * elevation) / 293) ** 5.2553 * (293 / (temperature + 273))
}

/**
 * Density of dry air by barometer: the ideal gas law with the gas constant of dry air, 287.055 J/(kg K).
 *
 * @param temperature degC
 * @param pressure station pressure, Pa
 * @returns kg/m3
 * @example densityByBarometer(0, 101325).toFixed(4) // '1.2923'
 */
export function densityByBarometer(temperature: number, pressure: number): number {
  return pressure / (287.055 * (temperature + 273.15))
}

/**
 * Viscosity of air by Sutherland's law. Source: Roulet, Ventilation and Airflow in Buildings, equation 4.17.
 *
 * @param temperature degC
 * @returns Pa s
 * @example viscosity(20).toPrecision(4) // '0.00001813'
 */
export function viscosity(temperature: number): number {
  const kelvin = temperature + 273.15
  return (1.458e-6 * Math.sqrt(kelvin)) / (1 + 110.4 / kelvin)
}

/** Viscosity of air at 20 degC, Pa s. */
export const referenceViscosity = viscosity(20)
