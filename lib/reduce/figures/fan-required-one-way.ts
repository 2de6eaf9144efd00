import { fanNeeded } from './fan-needed.ts'
import { term } from '../../words/term.ts'
import { say } from '../../words/say.ts'

/** Exhaust or supply only: what comes in by itself counts by its share of what is required. */
export const oneWay = (total: number, credit: number): number => total - (credit * credit) / total

export const fanRequiredOneWay = fanNeeded({
  id: 'fan-required-one-way',
  label: term`fan required, one way`,
  name: say`fan flow required, exhaust or supply only, detached dwelling`,
  formula: 'Qfan = Qtot − Qinf × Qinf / Qtot',
  needed: oneWay,
})
