/** Every check, in the order they are shown. */
import { air } from './air.ts'
import { baseline } from './baseline.ts'
import { bothDirections } from './both-directions.ts'
import type { Check } from './check.ts'
import { correlation } from './correlation.ts'
import { direction } from './direction.ts'
import { exponent } from './exponent.ts'
import { halfPressure } from './half-pressure.ts'
import { knownHole } from './known-hole.ts'
import { outlier } from './outlier.ts'
import { plausibility } from './plausibility.ts'
import { points } from './points.ts'
import { pressures } from './pressures.ts'
import { rangeWindow } from './range-window.ts'
import { steps } from './steps.ts'
import { volumeFloorArea } from './volume-floor-area.ts'
import { weather } from './weather.ts'
import { weightedLine } from './weighted-line.ts'

export const checks: readonly Check[] = [
  plausibility,
  direction,
  bothDirections,
  baseline,
  points,
  pressures,
  steps,
  halfPressure,
  exponent,
  correlation,
  weightedLine,
  outlier,
  rangeWindow,
  knownHole,
  air,
  weather,
  volumeFloorArea,
]
