/** Figures written as the page wants them. */
import { decimalsOf } from '../reduce/figures/index.ts'
import type { Report } from '../reduce/report.ts'
import { convert } from '../units/convert.ts'
import { write } from '../units/write.ts'
import type { Format, Names } from './types.ts'

/** A figure as text; nothing while the report does not hold it. An unknown unit leaves the figure in its own. */
export function writtenFigure(report: Report | undefined, id: string, format: Format): string | undefined {
  const found = report?.figures[id]
  if (!found) return undefined
  let { value, unit } = found
  if (format.unit !== undefined && format.unit !== unit) {
    value = convert(value, unit, format.unit)
    unit = format.unit
  }
  const { decimals = decimalsOf(id, unit), rounding = 'half-up', grouping, mark } = format
  return write(value, { decimals, rounding, grouping, mark })
}

/** By submitted name: the figures that are there. */
export function writtenTexts(report: Report | undefined, names: Names): Record<string, string> {
  const texts: Record<string, string> = {}
  for (const [id, given] of Object.entries(names)) {
    const format = typeof given === 'string' ? { name: given } : given
    const text = writtenFigure(report, id, format)
    if (text !== undefined) texts[format.name] = text
  }
  return texts
}
