import { referenceDensity } from '../air.ts'
import { knownHole as flowThrough } from '../known-hole.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/**
 * The flow that was read through a sharp-edged hole of known size, against the flow that must pass it. Source: physics of
 * an orifice and conservation of mass; how near: common practice, no source.
 */
export const knownHole: Check = {
  id: 'known-hole',
  name: say`Known hole`,
  run: ({ sheet: { fieldCheck, units, flowBasis, device }, readings: { air, deviceFactor, balanceFactor } }) => {
    if (!fieldCheck) {
      const text = say`No field check typed. Open a sharp-edged hole of known area, and compare the flow that it adds with what must pass it.`
      return { outcome: 'not checked', text }
    }
    const { area, pressure, flow, discharge } = fieldCheck
    // The air of the leaks passes the hole; this density gives its flow as the device reads it. Where the air is not known
    // it is taken to be the same in both, and of a flow shown at the calibration density its own density cancels.
    const alike = flowBasis === 'indicated' ? (device?.calibrationDensity ?? referenceDensity) : referenceDensity
    const { id: _, ...result } = flowThrough({
      area,
      areaUnit: units.length === 'ft' ? 'in2' : 'cm2',
      coefficient: discharge,
      pressure,
      flowUnit: units.flow,
      density: air ? air.leak * (deviceFactor * balanceFactor) ** 2 : alike,
      measured: flow,
    }).check
    return result
  },
}
