import type { Line } from '../fit.ts'
import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

interface Off {
  index: number
  /** How far it stands from the line through the others, as a fraction of its flow. */
  away: number
  /** Externally studentized residual. */
  studentized: number
}

/** The point that stands furthest off the line through the others. */
function furthest(line: Line, xs: readonly number[], ys: readonly number[]): Off {
  const squares = line.residual ** 2 * (line.count - 2)
  let worst: Off = { index: 0, away: 0, studentized: 0 }
  xs.forEach((x, index) => {
    const off = ys[index]! - line.intercept - line.slope * x
    const own = 1 - 1 / line.count - (x - line.meanX) ** 2 / line.sumSquares
    if (own < 1e-9) return
    const others = Math.max((squares - (off * off) / own) / (line.count - 3), 1e-12)
    const studentized = Math.abs(off) / Math.sqrt(others * own)
    if (studentized > worst.studentized) worst = { index, away: Math.expm1(off / own), studentized }
  })
  return worst
}

/** Source: studentized residual above 3 and 5 % off the line: common practice, no source. */
export const outlier: Check = {
  id: 'outlier',
  name: say`One point far off`,
  run: ({ leak: { line }, readings: { readings } }) => {
    if (!line) return undefined
    if (line.count < 4) return { outcome: 'not checked', text: say`Three points are too few to tell which one is off.` }
    const { index, away, studentized } = furthest(
      line,
      readings.map(({ pressure }) => Math.log(pressure)),
      readings.map(({ asRead }) => Math.log(asRead)),
    )
    const { number } = readings[index]!
    const found = say`point ${number}, ${short(Math.abs(away) * 100, 2)} % ${away < 0 ? say`below` : say`above`}, studentized residual ${short(studentized, 3)}`
    const expected = say`studentized residual up to 3, or within 5 %`
    if (studentized <= 3 || Math.abs(away) <= 0.05) {
      return { outcome: 'good', text: say`No point stands far off the line through the others.`, found, expected }
    }
    const text = say`Point ${number} stands ${short(Math.abs(away) * 100, 2)} % ${away < 0 ? say`below` : say`above`} the line through the others. Look for a slip in it, or read it again.`
    return { outcome: 'doubtful', text, found, expected }
  },
}
