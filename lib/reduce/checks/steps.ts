import { rules } from '../rules.ts'
import { short } from '../say.ts'
import { repeatsWithin } from '../stations.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** Pa: the largest step that ISO 9972 and ASTM E779 let stand, from memory. */
const largest = 10

/** Points are steered by hand, so a step meant to be 10 Pa comes out a little larger: common practice, no source. */
const nearly = 1.1

/** A step this many times smaller or larger than the middle one is uneven: common practice, no source. */
const uneven = 2.5

/** Pressures from low to high, those that repeat one another as their mean. */
function levels(pressures: readonly number[]): number[] {
  const groups: number[][] = []
  for (const pressure of pressures.toSorted((a, b) => a - b)) {
    const last = groups.at(-1)
    if (last && pressure - last[0]! < repeatsWithin) last.push(pressure)
    else groups.push([pressure])
  }
  return groups.map((group) => group.reduce((sum, pressure) => sum + pressure, 0) / group.length)
}

/**
 * Steps between the pressures of a regression. Source: not above 10 Pa and about even: ISO 9972, ASTM E779
 * (from memory); how far from it: common practice, no source.
 */
export const steps: Check = {
  id: 'steps',
  name: say`Steps between points`,
  run: ({ sheet, readings, leak }) => {
    if (!leak.line || sheet.procedure === 'astm-e3158') return undefined
    const all = levels(readings.readings.map(({ pressure }) => pressure))
    const between = all.slice(1).map((pressure, index) => pressure - all[index]!)
    if (between.length < 2) return undefined
    const sorted = between.toSorted((a, b) => a - b)
    const [least, middle, most] = [sorted[0]!, sorted[sorted.length >> 1]!, sorted.at(-1)!]
    const found = say`${short(least, 2)} to ${short(most, 2)} Pa`
    const expected = say`up to ${largest} Pa, about even`
    if (most > largest * nearly) {
      const at = between.indexOf(most)
      const text = say`Between the points at ${short(all[at]!, 3)} and ${short(all[at + 1]!, 3)} Pa there is a step of ${short(most, 2)} Pa; ${rules[sheet.procedure]!} asks for ${largest} Pa at most. Take a point between.`
      return { outcome: 'doubtful', text, found, expected }
    }
    if (most > uneven * middle || least < middle / uneven) {
      const text = say`The steps between the points go from ${short(least, 2)} to ${short(most, 2)} Pa. Spread the points evenly from the lowest to the highest pressure.`
      return { outcome: 'doubtful', text, found, expected }
    }
    return { outcome: 'good', text: say`The steps between the points are small and about even.`, found, expected }
  },
}
