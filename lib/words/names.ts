/** Names that are kept in English, in the language of the reader. What a person named is shown as it is. */
import { say, shown } from './say.ts'

/**
 * The role of a test, or the heading that an item is listed under.
 *
 * @example roleWords('duct system 2') // 'duct system 2'
 */
export function roleWords(role: string): string {
  const [, from] = /^duct systems from (\d+)$/.exec(role) ?? []
  if (from !== undefined) return say`duct systems from ${from}`
  // `duct system 2`; a role that two tests have: `before (2)`.
  const [, stem, number] = /^(.+) (\d+|\(\d+\))$/.exec(role) ?? []
  if (stem !== undefined && number !== undefined) return `${roleWords(stem)} ${number}`
  // `final, both directions`; a zone stands behind the test that it belongs to: `after, attic`.
  const [, first, rest] = /^(.+?), (.+)$/.exec(role) ?? []
  if (first !== undefined && rest !== undefined) return `${roleWords(first)}, ${roleWords(rest)}`
  const [, earlier] = /^(.+) and after$/.exec(role) ?? []
  return earlier === undefined ? shown(role) : say`${shown(earlier)} and ${shown('after')}`
}

/**
 * The label of an item that a form can be filled with.
 *
 * @example labelWords('limit of ACH50') // 'limit of ACH50'
 */
export function labelWords(label: string): string {
  const [, what, of = ''] = /^(limit|reduction|uncertainty of the reduction) of (.+?)(?:, 95 %)?$/.exec(label) ?? []
  if (what === 'limit') return say`limit of ${shown(of)}`
  if (what === 'reduction') return say`reduction of ${shown(of)}`
  return what === undefined ? shown(label) : say`uncertainty of the reduction of ${shown(of)}, 95 %`
}
