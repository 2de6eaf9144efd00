/** What the choices of a test are called. */

import { term } from '../words/term.ts'

interface Option {
  value: string
  label: string
}

const options = (labels: Record<string, string>): Option[] =>
  Object.entries(labels).map(([value, label]) => ({ value, label }))

export const choices = {
  direction: options({ depressurize: term`Depressurize`, pressurize: term`Pressurize` }),
  procedure: options({
    'one-point': term`One-point`,
    'two-point': term`Two-point`,
    'astm-e779': 'ASTM E779',
    'iso-9972': 'ISO 9972',
    'astm-e3158': 'ASTM E3158',
  }),
  stage: options({
    'rough-in': term`Rough-in`,
    'rough-in without air handler': term`Rough-in without air handler`,
    final: term`Final`,
    existing: term`Existing`,
  }),
  wind: options({ calm: term`Calm`, light: term`Light`, windy: term`Windy` }),
  leakage: options({ total: term`Total`, outside: term`To outside` }),
  areaSource: options({ plans: term`Plans`, measured: term`Measured`, estimated: term`Estimated` }),
  volumeBasis: options({ net: term`Net air volume`, gross: term`Gross volume` }),
  verdict: options({ pass: term`Pass`, fail: term`Fail` }),
} as const
