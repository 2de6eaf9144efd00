import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** Source: certificate of the device. */
export const rangeWindow: Check = {
  id: 'range-window',
  name: say`Range of the device`,
  run: ({ sheet, readings: { readings } }) => {
    const ranges = sheet.device?.ranges ?? {}
    let checked = 0
    const outside = sheet.points.flatMap((point, index) => {
      if ('flow' in point) return []
      const { minPressure, maxPressure } = ranges[point.range]!
      if (minPressure === undefined && maxPressure === undefined) return []
      checked++
      const pressure = Math.abs(point.devicePressure)
      const { low, high } = { low: minPressure ?? 0, high: maxPressure ?? Infinity }
      return pressure < low || pressure > high
        ? [{ number: readings[index]!.number, pressure, range: point.range, low, high }]
        : []
    })
    const [first] = outside
    if (!first) {
      if (checked > 0) return { outcome: 'good', text: say`Every device pressure lies within its range.` }
      if (sheet.points.every((point) => 'flow' in point)) return undefined
      return {
        outcome: 'not checked',
        text: say`The ranges have no lowest and highest pressure. Take them from the certificate.`,
      }
    }
    const { number, pressure, range, low, high } = first
    return {
      outcome: 'bad',
      text:
        pressure < low
          ? say`Point ${number} reads ${short(pressure)} Pa at the device, below what range “${range}” is calibrated for. Read it again with a smaller opening.`
          : say`Point ${number} reads ${short(pressure)} Pa at the device, above what range “${range}” is calibrated for. Read it again with a larger opening.`,
      found: `${short(pressure)} Pa`,
      expected: high === Infinity ? say`at least ${short(low)} Pa` : say`${short(low)} to ${short(high)} Pa`,
    }
  },
}
