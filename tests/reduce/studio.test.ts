/** Whole-dwelling ventilation of ASHRAE 62.2 (from memory): 0.03 × floor area + 7.5 × (bedrooms + 1), cfm and ft². */
import { expect, test } from 'vitest'
import { reduce } from '../../lib/reduce/reduce.ts'
import { fakeSheet } from './sheets.ts'

const required = (floorArea: number, bedrooms: number) =>
  reduce(fakeSheet({ building: { floorArea, bedrooms } })).figures['ventilation-required']?.value

test('a studio counts as one bedroom: 500 ft² without a bedroom need 15 + 15 = 30 cfm', () => {
  expect(required(500, 0)).toBeCloseTo(30, 9)
  expect(required(500, 1)).toBeCloseTo(30, 9)
  expect(required(500, 2)).toBeCloseTo(37.5, 9)
})
