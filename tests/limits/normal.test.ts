import { expect, test } from 'vitest'
import { NORMAL_975, normalDistribution } from '../../lib/limits/normal.ts'

/** pnorm(z) of R 4.2.2 (stats package), printed with "%.15g". */
const pnorm: [number, number][] = [
  [-8, 6.22096057427178e-16],
  [-6, 9.86587645037698e-10],
  [-5, 2.86651571879194e-7],
  [-4, 3.16712418331199e-5],
  [-3.5, 0.000232629079035525],
  [-3, 0.00134989803163009],
  [-2.575829, 0.00500000438924081],
  [-2, 0.0227501319481792],
  [-1.959963984540054, 0.025],
  [-1.6448536269514722, 0.05],
  [-1.5, 0.0668072012688581],
  [-1, 0.158655253931457],
  [-0.67448975, 0.25000000006231],
  [-0.5, 0.308537538725987],
  [-0.1, 0.460172162722971],
  [-0.001, 0.499601057786089],
  [0, 0.5],
  [0.001, 0.500398942213911],
  [0.1, 0.539827837277029],
  [0.25, 0.598706325682924],
  [0.5, 0.691462461274013],
  [1, 0.841344746068543],
  [1.2815515655446004, 0.9],
  [1.5, 0.933192798731142],
  [1.6448536269514722, 0.95],
  [2, 0.977249868051821],
  [2.5, 0.993790334674224],
  [3, 0.99865010196837],
  [4, 0.999968328758167],
  [5, 0.999999713348428],
  [6, 0.999999999013412],
  [8, 0.999999999999999],
]

test.each(pnorm)('the normal distribution function at %f is that of R', (z, expected) => {
  expect(Math.abs(normalDistribution(z) - expected)).toBeLessThan(2e-15)
})

test('far out it is 0 or 1, and the 97.5 % point is its inverse', () => {
  expect(normalDistribution(-Infinity)).toBe(0)
  expect(normalDistribution(-40)).toBe(0)
  expect(normalDistribution(40)).toBe(1)
  expect(normalDistribution(Infinity)).toBe(1)
  expect(normalDistribution(NORMAL_975)).toBeCloseTo(0.975, 14)
  expect(() => normalDistribution(Number.NaN)).toThrow(RangeError)
})
