/** Checks of several fans that run together: each within its range and its calibration. */
import { withinWindows } from '../../reduce/checks/range-window.ts'
import type { CheckResult } from '../../reduce/report.ts'
import { cellValue } from '../cells.ts'
import { fanName } from '../fans.ts'
import { reasonOf } from '../left-out.ts'
import { readRanges } from '../ranges.ts'
import { marksAt } from '../read.ts'
import type { Device, Test } from '../schema.ts'
import { calibration } from './calibration.ts'

const worst = ['bad', 'doubtful', 'not checked', 'good'] as const

/** Source: certificates of the devices. The calibration that is told is the one most to be asked about. */
export function fanChecks(test: Test, devices: readonly Device[]): CheckResult[] {
  const { sheet, units } = test
  const marks = marksAt(sheet, units)
  const fans = (sheet.fans ?? []).map((typed, at) => ({
    at,
    typed,
    name: fanName(typed, at),
    device: devices.find(({ id }) => id === typed.device),
  }))
  const read = fans.flatMap(({ at, typed, name, device }) => {
    if (!device || typed.reading !== 'device') return []
    const used = new Set(sheet.points.map(({ fans: all }) => all?.[at]?.range.trim() ?? ''))
    const { ranges } = readRanges(device, units, used)
    return sheet.points.flatMap((point, row) => {
      const cells = point.fans?.[at]
      const range = cells?.range.trim() ?? ''
      if (!cells || reasonOf(point) !== '' || !Object.hasOwn(ranges, range)) return []
      const path = `points.${row}.fans.${at}.devicePressure`
      const { value } = cellValue(cells.devicePressure, path, 'Pa', { marks: marks(path) })
      if (value === undefined) return []
      return { number: row + 1, pressure: Math.abs(value), range: `${name}, ${range}`, window: ranges[range]! }
    })
  })
  const window = withinWindows(read)
  const calibrations = [...new Set(fans.flatMap(({ device }) => device ?? []))]
    .map((device) => calibration(test, device))
    .toSorted((one, other) => worst.indexOf(one.outcome) - worst.indexOf(other.outcome))
  return [...calibrations.slice(0, 1), ...(window ? [{ id: 'range-window', ...window }] : [])]
}
