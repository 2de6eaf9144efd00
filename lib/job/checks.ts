/**
 * Checks of what a sheet does not hold, one file each: calibration, the instrument's own figure, wind, points left out, the
 * test before, the other direction.
 */
import type { CheckResult } from '../reduce/report.ts'
import { type Earlier, beforeAfter } from './checks/before-after.ts'
import { bothDirections } from './checks/both-directions.ts'
import { calibration } from './checks/calibration.ts'
import { instrumentFigure } from './checks/instrument-figure.ts'
import { leftOut } from './checks/left-out.ts'
import { wind } from './checks/wind.ts'
import type { Device, Test } from './schema.ts'
import { severalFans } from './several-fans.ts'
import { say } from '../words/say.ts'

/** Headings of the checks by id. */
export const testCheckNames: Record<string, string> = {
  calibration: say`Device calibration`,
  'instrument-figure': say`Instrument’s own figure`,
  wind: say`Wind`,
  'left-out': say`Points left out`,
  'before-after': say`Before and after`,
}

/**
 * The checks of a test beside those of its sheet; one with the id of a sheet's check takes its place.
 *
 * @param known the test and what it came to
 * @param before the test before the work, when this is the one after it
 * @param tests of the job
 */
export function testChecks(
  known: Earlier,
  devices: readonly Device[],
  before?: Earlier,
  tests: readonly Test[] = [],
): CheckResult[] {
  const { test, figures } = known
  const device = devices.find(({ id }) => id === test.sheet.device)
  return [
    ...(test.sheet.reading === 'fans'
      ? severalFans().checks(test, devices)
      : device === undefined
        ? []
        : [calibration(test, device)]),
    ...instrumentFigure(test, figures),
    ...(test.sheet.subject === 'enclosure' ? [wind(test)] : []),
    ...leftOut(test),
    ...beforeAfter(known, before),
    ...bothDirections(test, tests),
  ]
}
