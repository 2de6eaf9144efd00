/** Verdicts on readings that stand on a limit or next to it, against exact fractions: the arithmetic here is that of BigInt. */
import { describe, expect, test } from 'vitest'
import { type Limit, publishedLimits, roundingFlips, verdict } from '../../lib/limits/index.ts'
import { decimalsOf } from '../../lib/reduce/figures/index.ts'
import { reduce } from '../../lib/reduce/reduce.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'

/** A fraction: numerator and denominator. */
type Fraction = readonly [bigint, bigint]

/** What stands in a decimal text. */
function exact(text: string): Fraction {
  const [whole = '', part = ''] = text.split('.')
  return [BigInt(whole + part), 10n ** BigInt(part.length)]
}

const times = ([a, b]: Fraction, [c, d]: Fraction): Fraction => [a * c, b * d]
const over = (one: Fraction, [c, d]: Fraction): Fraction => times(one, [d, c])
/** Below 0, 0 or above 0, as one fraction lies to the other. */
const compare = ([a, b]: Fraction, [c, d]: Fraction): bigint => a * d - c * b

/** A fraction as a decimal text, cut or rounded up after some decimals. */
function decimal([a, b]: Fraction, decimals: number, up: boolean): string {
  const scale = 10n ** BigInt(decimals)
  const cut = (a * scale) / b
  const units = up && cut * b !== a * scale ? cut + 1n : cut
  const digits = units.toString().padStart(decimals + 1, '0')
  return decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`
}

/** Of each figure that a limit is on: the pressure of the reading, the size it is set over, and flow over size to the figure. */
const figures: Record<string, { pressure: number; size: keyof NonNullable<Sheet['building']>; by: Fraction }> = {
  'air-changes-50': { pressure: 50, size: 'volume', by: [60n, 1n] },
  'flow-50-per-enclosure-area': { pressure: 50, size: 'enclosureArea', by: [1n, 1n] },
  'flow-75-per-enclosure-area': { pressure: 75, size: 'enclosureArea', by: [1n, 1n] },
  'flow-4-per-enclosure-area-without-floor': { pressure: 4, size: 'enclosureAreaWithoutFloor', by: [1n, 1n] },
  'duct-flow-25-per-floor-area': { pressure: 25, size: 'floorArea', by: [100n, 1n] },
}

/** Whether the limit is in metric units; air changes are tried in feet. */
const metric = ({ unit }: Limit) => unit.startsWith('m3')

const sheetOf = (limit: Limit, flow: string, size: number): Sheet => {
  const at = figures[limit.figure]!
  return {
    subject: limit.subject,
    procedure: 'one-point',
    direction: 'depressurize',
    units: metric(limit)
      ? { flow: 'm3/h', temperature: 'degC', length: 'm' }
      : { flow: 'cfm', temperature: 'degF', length: 'ft' },
    baseline: { before: [0], after: [0] },
    points: [{ pressure: at.pressure, flow: Number(flow) }],
    flowBasis: 'indicated',
    building: { [at.size]: size },
    ...(limit.subject === 'ducts' && { duct: { leakage: 'total' } }),
  }
}

const sizes = Array.from({ length: (30_000 - 500) / 50 + 1 }, (_, at) => 500 + 50 * at)
const distinct = [
  ...new Map(publishedLimits.map((limit) => [`${limit.figure} ${limit.value} ${limit.unit}`, limit])).entries(),
]

describe('a sheet on a limit, or next to it, is judged as the exact fraction is', () => {
  test.each(distinct)('%s, sizes 500 to 30,000, at most and less than', (_, limit) => {
    const { by } = figures[limit.figure]!
    const bound = exact(String(limit.value))
    const wrong: string[] = []
    let on = 0
    for (const size of sizes) {
      const ideal = over(times(bound, [BigInt(size), 1n]), by)
      const flows = new Set([false, true].map((up) => decimal(ideal, 2, up)))
      for (const flow of flows) {
        if (!(Number(flow) > 0)) continue
        const side = compare(times(over(exact(flow), [BigInt(size), 1n]), by), bound)
        if (side === 0n) on += 1
        const figure = reduce(sheetOf(limit, flow, size)).figures[limit.figure]!
        for (const comparison of ['<=', '<'] as const) {
          const judged = verdict(figure, { ...limit, comparison })
          const meets = comparison === '<' ? side < 0n : side <= 0n
          const text = judged.sentences[0]!.text
          const decimals = decimalsOf(limit.figure, limit.unit)
          const flip = roundingFlips(figure.value, { ...limit, comparison }, decimals, 'half-up', figure.unit)
          const said = `${flow} over ${size}, ${comparison}: ${text} ${flip?.sentence ?? ''}`
          if (judged.meets !== meets || /\d\.\d*(0{7}|9{7})/.test(said)) wrong.push(said)
          if (side === 0n && (judged.probability !== 0.5 || judged.value !== limit.value || flip)) wrong.push(said)
        }
      }
    }
    expect(wrong).toEqual([])
    expect(on).toBeGreaterThan(100)
  })

  test('every figure that a published limit is on is tried', () => {
    expect(new Set(publishedLimits.map(({ figure }) => figure))).toEqual(new Set(Object.keys(figures)))
  })
})
