/**
 * A unit as a person reads it.
 *
 * @param unit id of a unit
 * @returns the printed symbol; nothing for a bare number
 * @example symbol('m3/(h.m2)') // 'm³/(h·m²)'
 */
export function symbol(unit: string): string {
  if (unit === '1') return ''
  if (unit === 'degF' || unit === 'degC') return `°${unit.at(-1)}`
  return unit
    .replaceAll('100ft2', '100 ft2')
    .replace('H2O', 'H₂O')
    .replaceAll('^n', 'ⁿ')
    .replaceAll('.', '·')
    .replaceAll(/2(?=$|\)|\/)/g, '²')
    .replaceAll('3', '³')
}
