import { referenceDensity } from '../air.ts'
import { knownHole as flowThrough } from '../known-hole.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/**
 * The flow that was read through a sharp-edged hole of known size, against the flow that must pass it. Source:
 * physics of an orifice; how near: common practice, no source.
 */
export const knownHole: Check = {
  id: 'known-hole',
  name: say`Known hole`,
  run: ({ sheet: { fieldCheck, units, flowBasis, device }, readings: { air } }) => {
    if (!fieldCheck) {
      const text = say`No field check typed. Open a sharp-edged hole of known area, and compare the flow that it adds with what must pass it.`
      return { outcome: 'not checked', text }
    }
    const { area, pressure, flow, discharge } = fieldCheck
    // The same air passes hole and device: for a flow shown at the calibration density its own density cancels.
    const indicated = device?.calibrationDensity ?? referenceDensity
    const { id: _, ...result } = flowThrough({
      area,
      areaUnit: units.length === 'ft' ? 'in2' : 'cm2',
      coefficient: discharge,
      pressure,
      flowUnit: units.flow,
      density: flowBasis === 'indicated' ? indicated : (air?.device ?? referenceDensity),
      measured: flow,
    }).check
    return result
  },
}
