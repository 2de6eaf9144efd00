import type { Figure } from './figure.ts'
import { flowAt } from './flow-at.ts'
import { say } from '../../words/say.ts'

const flow25 = flowAt(25)

/** Which leakage the flow is: all of it, or to outside only. */
function ofWhat(leakage: 'total' | 'outside' | undefined): string | undefined {
  if (leakage === undefined) return undefined
  return leakage === 'total' ? say`Total leakage.` : say`Leakage to outside.`
}

export const ductFlow25: Figure = {
  ...flow25,
  id: 'duct-flow-25',
  name: say`duct leakage at 25 Pa`,
  group: 'ducts',
  subject: 'ducts',
  source: say`IECC (from memory)`,
  compute: (context, given) => ({ ...flow25.compute(context, given), note: ofWhat(context.sheet.duct?.leakage) }),
}
