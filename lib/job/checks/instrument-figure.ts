/** What the instrument showed as its own result against what its readings come to. */
import { wordOf } from '../../reduce/figures/index.ts'
import type { CheckResult, Report } from '../../reduce/report.ts'
import { symbol } from '../../units/symbol.ts'
import { marksIn } from '../../units/comma.ts'
import { write } from '../../units/write.ts'
import { cellValue } from '../cells.ts'
import type { Test } from '../schema.ts'
import { say } from '../../words/say.ts'

const AGREES = 0.02

/** Source: two percent of agreement is common practice, no source. */
export function instrumentFigure(test: Test, figures: Report['figures']): CheckResult[] {
  const { value } = cellValue(test.instrumentFigure, 'instrumentFigure', test.units.flow, {
    marks: marksIn(test.units),
  })
  const [raw, corrected] =
    test.sheet.subject === 'ducts' ? ['duct-flow-25-as-read', 'duct-flow-25'] : ['flow-50-as-read', 'flow-50']
  const [asRead, standard] = [figures[raw], figures[corrected]]
  if (value === undefined || asRead === undefined || standard === undefined) return []
  const id = 'instrument-figure'
  const off = Math.abs(value / asRead.value - 1)
  const unit = symbol(asRead.unit)
  const written = (number: number) => `${write(number, { decimals: number < 100 ? 1 : 0 })} ${unit}`
  const expected = say`${written(asRead.value)} as read`
  const found = say`${written(value)}, ${write(100 * off, { decimals: 1 })} % off`
  if (off <= AGREES) {
    return [{ id, outcome: 'good', text: say`The instrument’s own figure agrees with the readings.`, found, expected }]
  }
  if (Math.abs(value / standard.value - 1) <= AGREES) {
    const text = say`The instrument’s own figure agrees with ${wordOf(corrected, standard.unit)} after the air correction, not with the readings as typed. Check whether the typed flows were corrected already.`
    return [{ id, outcome: 'doubtful', text, found, expected }]
  }
  const text = say`The instrument’s own figure differs from the readings. Check the digits, the range and the baseline.`
  return [{ id, outcome: off > 0.1 ? 'bad' : 'doubtful', text, found, expected }]
}
