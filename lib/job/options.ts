/** What the choices of a test are called. */

interface Option {
  value: string
  label: string
}

const options = (labels: Record<string, string>): Option[] =>
  Object.entries(labels).map(([value, label]) => ({ value, label }))

export const choices = {
  direction: options({ depressurize: 'Depressurize', pressurize: 'Pressurize' }),
  procedure: options({
    'one-point': 'One-point',
    'two-point': 'Two-point',
    'astm-e779': 'ASTM E779',
    'iso-9972': 'ISO 9972',
  }),
  stage: options({
    'rough-in': 'Rough-in',
    'rough-in without air handler': 'Rough-in without air handler',
    final: 'Final',
    existing: 'Existing',
  }),
  wind: options({ calm: 'Calm', light: 'Light', windy: 'Windy' }),
  leakage: options({ total: 'Total', outside: 'To outside' }),
  areaSource: options({ plans: 'Plans', measured: 'Measured', estimated: 'Estimated' }),
  verdict: options({ pass: 'Pass', fail: 'Fail' }),
} as const
