import { fanNeeded } from './fan-needed.ts'

/** Balanced: what comes in by itself counts in full. */
export const balanced = (total: number, credit: number): number => total - credit

export const fanRequired = fanNeeded({
  id: 'fan-required',
  label: 'fan required',
  name: 'fan flow required, balanced system, detached dwelling',
  formula: 'Qfan = Qtot − Qinf',
  needed: balanced,
})
