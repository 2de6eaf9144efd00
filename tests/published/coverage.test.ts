/**
 * A seeded sample of what `npm run soak coverage` looks at in full: 95 % limits hold the truth of drawn tests in 93 to
 * 98 of 100, by the method of JCGM 101:2008 (propagation of distributions).
 */
import { beforeAll, describe, expect, test } from 'vitest'
import { type Cell, type Engine, engineAt, ids, measure, measured } from './coverage.ts'
import { type Plan, plans, tests, weathers } from './drawn.ts'

const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length
const squares = (list: readonly number[]) => list.reduce((sum, one) => sum + (one - mean(list)) ** 2, 0)

const planned = (name: string): Plan => plans.find((plan) => plan.name === name)!

describe('what is drawn', () => {
  test.each(plans.filter(({ procedure }) => procedure !== 'one-point'))(
    '$name: without noise it is the truth',
    async (plan) => {
      const { reduce } = await engineAt()
      const draw = tests(plan, weathers[2]!, 7, 0)
      for (let turn = 0; turn < 20; turn++) {
        const { sheet, truth } = draw()
        const { figures } = reduce(sheet)
        for (const id of ids) expect(figures[id]!.value / measured[id](truth)).toBeCloseTo(1, plan.repeats > 1 ? 3 : 9)
      }
    },
  )

  test('baseline readings scatter and drift as the weather says', () => {
    const plan = planned('one point, 5 readings, baseline 5 + 5')
    for (const weather of weathers) {
      const draw = tests(plan, weather, 8)
      let [within, between] = [0, 0]
      const draws = 4000
      for (let turn = 0; turn < draws; turn++) {
        const { before, after } = draw().sheet.baseline
        within += (squares(before) + squares(after)) / 8 / draws
        between += (mean(after) - mean(before)) ** 2 / draws
      }
      expect(Math.sqrt(within) / weather.baseline).toBeCloseTo(1, 1)
      // The drift, and what is left of the scatter in the means of five.
      expect(Math.sqrt(between) / Math.hypot(weather.drift, weather.baseline * Math.sqrt(2 / 5))).toBeCloseTo(1, 1)
    }
  })

  test('readings scatter about the house’s own line by noise and by one error each of gauge and flow', () => {
    const plan = planned('one point, 5 readings, baseline 5 + 5')
    for (const weather of weathers) {
      const draw = tests(plan, weather, 9)
      let [each, common] = [0, 0]
      const draws = 4000
      for (let turn = 0; turn < draws; turn++) {
        const { sheet, truth } = draw()
        const { before, after } = sheet.baseline
        const zero = mean([...before, ...after])
        const off = sheet.points.map((point) => {
          const flow = 'flow' in point ? point.flow : Number.NaN
          return Math.log(flow / truth.coefficient / (zero - point.pressure) ** truth.exponent)
        })
        common += mean(off) ** 2 / draws
        each += squares(off) / 4 / draws
      }
      // Times of the readings are even between the baselines: their drift has a variance of a twelfth.
      const [noise, drift] = [(0.65 * weather.pressure) / 50, (0.65 * weather.drift) / 50]
      expect(Math.sqrt(each) / Math.hypot(noise, weather.flow, drift * Math.sqrt(1 / 12))).toBeCloseTo(1, 1)
      // Gauge 0.5 % and flow 2.5 %, and what is left of noise, baseline and drift in the means.
      const left = Math.hypot(noise, weather.flow, drift * Math.sqrt(1 / 12)) / Math.sqrt(5)
      const zero = (0.65 * weather.baseline) / 50 / Math.sqrt(10)
      expect(Math.sqrt(common) / Math.hypot(0.65 * 0.005, 0.025, left, zero)).toBeCloseTo(1, 1)
    }
  })
})

const DRAWS = 1000

/** Three standard deviations of a share of so many draws. */
const slack = (share: number) => 3 * Math.sqrt((share * (100 - share)) / DRAWS)

const names = [
  'one point, 1 reading',
  'one point, 5 readings',
  'two points, 1 + 1',
  'two points, 5 + 5',
  'E779, 5 points',
  'E779, 7 points',
  'E779, 7 points, 3 ranges',
  'ISO 9972, 10 points',
  'ISO 9972, 10 points, 3 ranges',
]

const sampled = [
  ...names.map((name) => [name, `${name}, baseline 5 + 5`] as const),
  ['one point, two fans', 'one point, 1 reading, baseline 5 + 5, two fans'] as const,
  ['E779, 7 points, three fans', 'E779, 7 points, baseline 5 + 5, three fans'] as const,
].flatMap(([name, of]) =>
  weathers.map((weather) => ({ name, weather: weather.name, cell: { plan: planned(of), weather } })),
)

describe('95 % limits hold the truth in 93 to 98 of 100', () => {
  let engine: Engine
  beforeAll(async () => {
    engine = await engineAt()
  })

  test.each(sampled)('$name, $weather', ({ cell }) => {
    const { found, refused }: Cell = measure(engine, cell.plan, cell.weather, DRAWS, 50)
    expect(refused).toBe(0)
    const outside = ids.filter(
      (id) => 100 * found[id].coverage < 93 - slack(93) || 100 * found[id].coverage > 98 + slack(98),
    )
    expect(outside.map((id) => `${id}: ${100 * found[id].coverage} %`)).toEqual([])
  })
})
