/** Reads the ranges of a device that a test uses. */
import type { Range } from '../sheet/schema.ts'
import { marksIn } from '../units/comma.ts'
import { convert } from '../units/convert.ts'
import { cellValue, nameOf } from './cells.ts'
import type { Problem } from './problem.ts'
import type { Device, TypedUnits } from './schema.ts'
import { say } from '../words/say.ts'

/**
 * The ranges named in `used`, coefficients in the test's flow unit. A range whose coefficient or exponent cannot be
 * read is left out, and so are ranges of one name; a bad end of a span is left out alone.
 */
export function readRanges(
  device: Device | undefined,
  units: Pick<TypedUnits, 'flow'>,
  used: Set<string>,
): { ranges: Record<string, Range>; problems: Problem[] } {
  const ranges: Record<string, Range> = {}
  const problems: Problem[] = []
  const names = (device?.ranges ?? []).map((range) => range.name.trim())
  for (const [at, typed] of (device?.ranges ?? []).entries()) {
    const name = typed.name.trim()
    if (device === undefined || name === '' || !used.has(name)) continue
    const read = (field: 'coefficient' | 'exponent' | 'minPressure' | 'maxPressure', unit: string, needed: boolean) => {
      const path = `device.ranges.${at}.${field}`
      const remedy = needed
        ? say`from the certificate; until then the points read with range “${name}” are left out`
        : say`or empty the cell`
      const { value, problem } = cellValue(typed[field], path, unit, {
        range: name,
        remedy,
        marks: marksIn(device),
      })
      if (problem) problems.push(problem)
      else if (value === undefined && needed) {
        const message = say`${nameOf(path, name)}: nothing typed. Type it under devices, ${remedy}.`
        problems.push({ path, code: 'missing', severity: 'missing', message })
      }
      return value
    }
    // A name that two ranges have does not say which of them was in use.
    const first = names.indexOf(name)
    if (first < at) {
      const path = `device.ranges.${at}.name`
      const message = say`Range “${name}”: another range of this device has this name too. Give each a name of its own; until then the points read with range “${name}” are left out.`
      problems.push({ path, code: 'same-name', severity: 'bad', message })
    }
    const coefficient = read('coefficient', device.flowUnit, true)
    const exponent = read('exponent', '1', true)
    const minPressure = read('minPressure', 'Pa', false)
    const maxPressure = read('maxPressure', 'Pa', false)
    if (coefficient === undefined || exponent === undefined || first !== names.lastIndexOf(name)) continue
    const crossed = minPressure !== undefined && maxPressure !== undefined && maxPressure < minPressure
    if (crossed) {
      const path = `device.ranges.${at}.maxPressure`
      const message = say`${nameOf(path, name)}: it is below the lowest pressure. Type both from the certificate, or empty the cells.`
      problems.push({ path, code: 'out-of-range', severity: 'bad', message })
    }
    ranges[name] = {
      coefficient: convert(coefficient, device.flowUnit, units.flow),
      exponent,
      ...(minPressure === undefined || crossed ? {} : { minPressure }),
      ...(maxPressure === undefined || crossed ? {} : { maxPressure }),
    }
  }
  return { ranges, problems }
}
