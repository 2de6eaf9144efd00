import type { Range } from '../../sheet/schema.ts'
import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** A pressure read at a device through one of its ranges. */
export interface Read {
  /** What its point is called. */
  number: number
  /** Pa. */
  pressure: number
  range: string
  window: Pick<Range, 'minPressure' | 'maxPressure'>
}

/** Whether every pressure lies within what its range is calibrated for; nothing when none was read. */
export function withinWindows(all: readonly Read[]): ReturnType<Check['run']> {
  const known = all.filter(({ window }) => window.minPressure !== undefined || window.maxPressure !== undefined)
  const first = known.find(
    ({ pressure, window: { minPressure = 0, maxPressure = Infinity } }) =>
      pressure < minPressure || pressure > maxPressure,
  )
  if (!first) {
    if (known.length > 0) return { outcome: 'good', text: say`Every device pressure lies within its range.` }
    if (all.length === 0) return undefined
    return {
      outcome: 'not checked',
      text: say`The ranges have no lowest and highest pressure. Take them from the certificate.`,
    }
  }
  const { number, pressure, range, window } = first
  const { minPressure: low = 0, maxPressure: high = Infinity } = window
  return {
    outcome: 'bad',
    text:
      pressure < low
        ? say`Point ${number} reads ${short(pressure)} Pa at the device, below what range “${range}” is calibrated for. Read it again with a smaller opening.`
        : say`Point ${number} reads ${short(pressure)} Pa at the device, above what range “${range}” is calibrated for. Read it again with a larger opening.`,
    found: `${short(pressure)} Pa`,
    expected: high === Infinity ? say`at least ${short(low)} Pa` : say`${short(low)} to ${short(high)} Pa`,
  }
}

/** Source: certificate of the device. */
export const rangeWindow: Check = {
  id: 'range-window',
  name: say`Range of the device`,
  run: ({ sheet, readings: { readings } }) =>
    withinWindows(
      sheet.points.flatMap((point, index) =>
        'range' in point
          ? {
              number: readings[index]!.number,
              pressure: Math.abs(point.devicePressure),
              range: point.range,
              window: sheet.device!.ranges[point.range]!,
            }
          : [],
      ),
    ),
}
