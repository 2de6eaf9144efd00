/** Whether a test before the work and one after it can be compared. */
import { decimalsOf, usualFlow, wordOf } from './figures/index.ts'
import type { CheckResult, Report } from './report.ts'
import type { Point, Sheet } from '../sheet/schema.ts'
import { convert } from '../units/convert.ts'
import { symbol } from '../units/symbol.ts'
import { write } from '../units/write.ts'
import { rules } from './rules.ts'
import { short } from './say.ts'
import { say, shown } from '../words/say.ts'

export interface Tested {
  sheet: Sheet
  figures: Report['figures']
}

/** Sizes further apart than this share are another building or a slip: common practice, no source. */
const apart = 0.005

const sizes = [
  ['volume', say`volume`, '3'],
  ['floorArea', say`floor area`, '2'],
  ['enclosureArea', say`enclosure area`, '2'],
] as const

/** A size that both give and that differs, in the words of a sentence. */
function differing(before: Sheet, after: Sheet): { name: string; was: string; is: string } | undefined {
  const [from, to] = [before.units.length, after.units.length]
  for (const [key, name, power] of sizes) {
    const [typed, is] = [before.building?.[key], after.building?.[key]]
    if (typed === undefined || is === undefined) continue
    const was = convert(typed, from + power, to + power)
    if (Math.abs(was / is - 1) <= apart) continue
    const unit = symbol(to + power)
    return { name, was: `${short(was)} ${unit}`, is: `${short(is)} ${unit}` }
  }
  return undefined
}

/** A direction or procedure in words; a standard by its name. */
const wayOf = (way: string) => rules[way] ?? shown(way)

const numbersOf = (point: Point) => Object.values(point).join(' ')

function sameReadings(before: Sheet, after: Sheet): boolean {
  return (
    before.points.length === after.points.length &&
    before.points.every((point, index) => numbersOf(point) === numbersOf(after.points[index]!))
  )
}

/**
 * A test before the work against one after it: readings typed twice, sizes that differ, more leakage than before, and
 * what was not done alike. Source: common practice, no source.
 *
 * @returns nothing when the two tests are of different kinds and have no result in common
 */
export function beforeAfter(before: Tested, after: Tested): Omit<CheckResult, 'id'> | undefined {
  const { subject } = after.sheet
  const result = usualFlow(subject)
  const [first, is] = [before.figures[result], after.figures[result]]
  if (before.sheet.subject !== subject || !first || !is) return undefined
  const was = convert(first.value, first.unit, is.unit)
  const label = wordOf(result, is.unit)
  // Both as the figures show them, so that nobody compares two roundings.
  const written = (value: number) => write(value, { decimals: decimalsOf(result, is.unit) })
  const found = say`${label} ${written(was)} before, ${written(is.value)} after`
  if (sameReadings(before.sheet, after.sheet)) {
    const text = say`The readings are the same as those of the test before. Type what was read after the work.`
    return { outcome: 'bad', text, found, expected: say`other readings` }
  }
  const size = differing(before.sheet, after.sheet)
  if (size) {
    const text = say`The ${size.name} is another than in the test before. Give both tests the same, or say in the notes what was built.`
    return { outcome: 'bad', text, found: say`${size.was} before, ${size.is} after`, expected: say`the same` }
  }
  if (is.value > was) {
    const text = say`It leaks more than before. Look for a window, hatch or damper left open, and for a slip in either test.`
    return { outcome: 'doubtful', text, found, expected: say`less than before` }
  }
  for (const [key, name] of [
    ['direction', say`direction`],
    ['procedure', say`procedure`],
  ] as const) {
    if (before.sheet[key] === after.sheet[key]) continue
    const text = say`The ${name} is another than in the test before, which may pass for a change of the leaks. Test both alike, or say so in the notes.`
    const both = say`${wayOf(before.sheet[key])} before, ${wayOf(after.sheet[key])} after`
    return { outcome: 'doubtful', text, found: both, expected: say`the same ${name}` }
  }
  return { outcome: 'good', text: say`It leaks less than before, and both tests were made alike.`, found }
}
