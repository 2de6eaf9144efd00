import { subjectOf } from '../reduce/figures/index.ts'
import type { Limit } from './schema.ts'
import { CAUTION } from './published.ts'
import { say } from '../words/say.ts'

/**
 * A limit of the user's own: from a permit, a program's paper or a local amendment.
 *
 * @param figure id of the figure it is compared with
 * @param value above zero, in `unit`
 * @param unit id of a unit of lib/units
 * @returns a limit with the id `own`, met when the figure is at most `value`
 * @throws RangeError when the value is not a number above zero
 * @example
 * ownLimit('air-changes-50', 4, '1/h').value // 4
 */
export function ownLimit(figure: string, value: number, unit: string): Limit {
  if (!(value > 0 && Number.isFinite(value))) {
    throw new RangeError(say`The limit must be a number above zero. Type the number that the permit or program gives.`)
  }
  return {
    id: 'own',
    title: say`Own limit`,
    edition: say`Own limit`,
    clause: '',
    subject: subjectOf(figure),
    figure,
    unit,
    value,
    comparison: '<=',
    confidence: 'own',
    checked: '',
    caution: CAUTION,
  }
}
