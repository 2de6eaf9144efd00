/** Several fans that ran together, written out for the report: which each was, and what was read at it. */
import { fanName } from '../job/fans.ts'
import { fansIn } from '../job/fans-edit.ts'
import type { Device, Test } from '../job/schema.ts'
import { sentence } from '../reduce/errors.ts'
import { asRead } from '../results/in-locale.ts'
import { minus } from '../results/lines.ts'
import { symbol } from '../units/symbol.ts'
import { say } from '../words/say.ts'

/** So many points have room in a line. */
const most = 10

/** A line for each fan: its device, and its reading at each point; nothing of a test with one device. */
export function fanWords({ sheet, units }: Test, devices: readonly Device[]): string[] {
  const fans = sheet.reading === 'fans' ? (sheet.fans ?? []) : []
  return fans.map((fan, at) => {
    const device = devices.find(({ id }) => id === fan.device)
    const named = device && [device.name.trim(), device.serial.trim()].filter(Boolean).join(', ')
    const byDevice = fan.reading === 'device'
    const read = sheet.points.slice(0, most).flatMap((point, row) => {
      const cells = fansIn(point, fans.length)[at]!
      const value = (byDevice ? cells.devicePressure : cells.flow).trim()
      const range = byDevice ? ` ${cells.range.trim()}` : ''
      return point.pressure.trim() === '' ? [] : `${row + 1}: ${value ? asRead(minus(value)) + range : say`off`}`
    })
    const unit = byDevice ? say`Pa at the device` : symbol(units.flow)
    const start = sentence(fanName(fan, at)) + (named ? ` (${named})` : '')
    return say`${start}, ${unit}, by point: ${read.join('; ')}.`
  })
}
