import { short } from '../say.ts'
import type { Check } from './check.ts'

/** Source: certificate of the device. */
export const rangeWindow: Check = {
  id: 'range-window',
  name: 'Range of the device',
  run: ({ sheet }) => {
    const ranges = sheet.device?.ranges ?? {}
    let checked = 0
    const outside = sheet.points.flatMap((point, index) => {
      if ('flow' in point) return []
      const { minPressure, maxPressure } = ranges[point.range]!
      if (minPressure === undefined && maxPressure === undefined) return []
      checked++
      const pressure = Math.abs(point.devicePressure)
      const { low, high } = { low: minPressure ?? 0, high: maxPressure ?? Infinity }
      return pressure < low || pressure > high ? [{ index, pressure, range: point.range, low, high }] : []
    })
    const [first] = outside
    if (!first) {
      if (checked > 0) return { outcome: 'good', text: 'Every device pressure lies within its range.' }
      if (sheet.points.every((point) => 'flow' in point)) return undefined
      return {
        outcome: 'not checked',
        text: 'The ranges have no lowest and highest pressure. Take them from the certificate.',
      }
    }
    const { index, pressure, range, low, high } = first
    return {
      outcome: 'bad',
      text: `Point ${index + 1} reads ${short(pressure)} Pa at the device, ${pressure < low ? 'below' : 'above'} what range “${range}” is calibrated for. Read it again with ${pressure < low ? 'a smaller' : 'a larger'} opening.`,
      found: `${short(pressure)} Pa`,
      expected: high === Infinity ? `at least ${short(low)} Pa` : `${short(low)} to ${short(high)} Pa`,
    }
  },
}
