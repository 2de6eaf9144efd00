import { expect, test } from 'vitest'
import { symbol } from '../../lib/units/symbol.ts'
import { runs, typeset } from '../../lib/view/figure/formula.tsx'

const marked = (formula: string): string =>
  runs(formula)
    .map(
      ({ as, text }) =>
        ({ plain: text, symbol: `<i>${text}</i>`, below: `<sub>${text}</sub>`, above: `<sup>${text}</sup>` })[as],
    )
    .join('')

test('single letters are symbols, words and digits are not', () => {
  expect(marked('ACH50 = Q50 per hour / V')).toBe('ACH50 = Q50 per hour / <i>V</i>')
  expect(marked('ΔP = |P − P0|')).toBe('Δ<i>P</i> = |<i>P</i> − P0|')
})

test('powers and indices', () => {
  expect(marked('C × 50^n')).toBe('<i>C</i> × 50<sup>n</sup>')
  expect(marked('(ρ/ρ0)^(1−n)')).toBe('(<i>ρ</i>/ρ0)<sup>1−n</sup>')
  expect(marked('Q_env = 4^-0.5')).toBe('<i>Q</i><sub>env</sub> = 4<sup>-0.5</sup>')
})

test('a unit is written the same way wherever it stands, and its letters are no symbols', () => {
  for (const unit of ['m³/h', 'm³/(h·m²)', 'L/s', 'L/(s·m²)', 'm³/s', 'm²', 'm³'])
    for (const line of ['Q = 12 UNIT', 'Q in UNIT, k', '12 UNIT', 'UNIT'])
      expect(marked(line.replace('UNIT', unit)).replaceAll(/<i>[Qk]<\/i>/g, (letter) => letter[3]!)).toBe(
        line.replace('UNIT', unit),
      )
  expect(typeset('3.1 m3/(h.m2)')).toBe(`3.1 ${symbol('m3/(h.m2)')}`)
  expect(typeset('5.5 cfm/100ft2')).toBe(`5.5 ${symbol('cfm/100ft2')}`)
  expect(marked('L = 3.4 m')).toMatch(/ = 3\.4 m$/)
})

test('minus signs and powers of units are set, other hyphens and digits stay', () => {
  expect(typeset('P0 = -1 Pa, 1.24 kg/m3, V = 15810 ft3')).toBe('P0 = −1 Pa, 1.24 kg/m³, V = 15810 ft³')
  expect(typeset('blower-door, Q2, 5-point, m32')).toBe('blower-door, Q2, 5-point, m32')
})
