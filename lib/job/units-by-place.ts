/** The units a tester is likely to type in, by where the browser's language says they are. */
import type { TypedUnits } from './schema.ts'
import { unitSets } from './units.ts'

/** The sets of units that are offered at the start. */
export const unitChoices: readonly TypedUnits[] = [
  unitSets.IP,
  unitSets.SI,
  { flow: 'L/s', temperature: 'degC', length: 'm' },
]

/** Where houses are measured in feet. Common practice, no source. */
const inFeet = new Set(['US', 'LR', 'MM'])

/**
 * The units of a place: feet and cfm in the United States, litres per second in Canada, else cubic metres per hour.
 *
 * @param language a tag of BCP 47, such as that of the browser
 * @example unitsByPlace('es-US').flow // 'cfm'
 */
export function unitsByPlace(language: string): TypedUnits {
  const { region } = new Intl.Locale(language).maximize()
  if (region === undefined || inFeet.has(region)) return { ...unitSets.IP }
  return { ...(region === 'CA' ? unitChoices[2]! : unitSets.SI) }
}
