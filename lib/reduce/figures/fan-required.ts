import { fanNeeded } from './fan-needed.ts'
import { term } from '../../words/term.ts'
import { say } from '../../words/say.ts'

/** Balanced: what comes in by itself counts in full. */
export const balanced = (total: number, credit: number): number => total - credit

export const fanRequired = fanNeeded({
  id: 'fan-required',
  label: term`fan required`,
  name: say`fan flow required, balanced system, detached dwelling`,
  formula: 'Qfan = Qtot − Qinf',
  needed: balanced,
})
