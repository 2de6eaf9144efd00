/** What the outside checks share: a sheet with nothing in it but what the check gives, and two measures of closeness. */
import { reduce } from '../../lib/engine/index.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'

/** A house test in cfm, degF and feet, without baseline or air data. */
export const sheet = (given: Partial<Sheet> & Pick<Sheet, 'points'>): Sheet => ({
  subject: 'enclosure',
  procedure: 'one-point',
  direction: 'depressurize',
  units: { flow: 'cfm', temperature: 'degF', length: 'ft' },
  baseline: { before: [], after: [] },
  flowBasis: 'indicated',
  ...given,
})

export const metric = { flow: 'm3/h', temperature: 'degC', length: 'm' } as const

/** A figure that must be there. */
export function figure(from: Sheet, id: string, options: Parameters<typeof reduce>[1] = {}) {
  const found = reduce(from, options).figures[id]
  if (!found) throw new Error(`the report has no figure ${id}`)
  return found
}

/** A printed number for `toBeCloseTo`: it is met when the last printed digit is. */
export const printed = (text: string): [value: number, decimals: number] => [
  Number(text),
  text.split('.')[1]?.length ?? 0,
]

/** Relative distance of what was found from what was expected. */
export const off = (found: number | undefined, expected: number | undefined): number =>
  Math.abs((found ?? Number.NaN) / (expected ?? Number.NaN) - 1)
