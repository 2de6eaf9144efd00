/** A few seeded plans and presses; a thousand of each: `npm run soak room`. */
import { expect, test } from 'vitest'
import { pressUnder } from './pressing.ts'
import { readPlans } from './reading.ts'

test('a page that reads in every way learns nothing of what plans hold', async () => {
  expect(await readPlans(20261130, 12)).toEqual([])
})

test('a page that lies over plans in every way gets no press through', async () => {
  const { wrong, refused, presses } = await pressUnder(20261130, 10)
  expect(wrong).toEqual([])
  expect(presses).toBe(10)
  expect(refused).toBeGreaterThan(3)
})
