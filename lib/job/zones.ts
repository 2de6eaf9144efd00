/** What the pressures typed for a zone beside the house, and the flows with it closed and opened, come to. */
import type { CheckResult } from '../reduce/report.ts'
import { short } from '../reduce/say.ts'
import { type ZoneLeakage, zoneLeakage, type ZonePressures, zonePressures, type ZoneRatio } from '../reduce/zones.ts'
import { marksIn } from '../units/comma.ts'
import { cellValue, nameOf, unitAt } from './cells.ts'
import type { Problem } from './problem.ts'
import type { TypedUnits, TypedZone } from './schema.ts'
import { say } from '../words/say.ts'

/** Usual for a house: common practice, no source. */
const USUAL_HOUSE = 50

/** Pressures in a row add up; what may be missing is the larger of these: common practice, no source. */
const SUM_WITHIN = { pascal: 3, share: 0.1 }

export interface ReadZone {
  problems: Problem[]
  /** The pressure that the flows stand at, Pa. */
  house: number
  /** As typed, Pa, once both are. */
  pressures?: Pick<ZonePressures, 'houseZone' | 'zoneOutdoors'>
  /** Once both pressures are typed. */
  ratio?: ZoneRatio
  /** Once both flows are typed too. */
  leakage?: ZoneLeakage
  checks: CheckResult[]
}

export function readZone(typed: TypedZone, at: number, units: TypedUnits): ReadZone {
  const problems: Problem[] = []
  const pathOf = (field: keyof TypedZone) => `zones.${at}.${field}`
  const add = (field: keyof TypedZone, code: string, severity: Problem['severity'], message: string) =>
    problems.push({ path: pathOf(field), code, severity, message: `${nameOf(pathOf(field))}: ${message}` })
  const read = (field: Exclude<keyof TypedZone, 'name'>) => {
    const path = pathOf(field)
    const { value, problem } = cellValue(typed[field], path, unitAt(path, units), { marks: marksIn(units) })
    if (problem) problems.push(problem)
    return value
  }
  const house = Math.abs(read('house') ?? USUAL_HOUSE)
  const [houseZone, zoneOutdoors, exponent] = [read('houseZone'), read('zoneOutdoors'), read('exponent')]
  const [closed, opened] = [read('closed'), read('opened')]
  const half = (one: 'houseZone' | 'zoneOutdoors' | 'closed' | 'opened', other: typeof one, remedy: string) => {
    if (typed[one].trim() === '' && typed[other].trim() !== '')
      add(one, 'missing', 'missing', say`nothing typed. ${remedy}`)
  }
  const pressureRemedy = say`Measure it while the house is held at its pressure: the ratio needs both.`
  half('houseZone', 'zoneOutdoors', pressureRemedy)
  half('zoneOutdoors', 'houseZone', pressureRemedy)
  const flowRemedy = say`The flows of the paths need both flows; the ratio needs neither.`
  half('closed', 'opened', flowRemedy)
  half('opened', 'closed', flowRemedy)

  if (houseZone === undefined || zoneOutdoors === undefined) return { problems, house, checks: [] }
  const pressures: ZonePressures = { houseZone, zoneOutdoors, exponent }
  const ratio = zonePressures(pressures)
  const zone = { problems, house, pressures, ratio, checks: [ratio.check, sumCheck(pressures, house)] }
  if (closed === undefined || opened === undefined) return zone
  try {
    return { ...zone, leakage: zoneLeakage({ ...pressures, closed, opened, pressure: house }) }
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    add(opened <= closed ? 'opened' : 'zoneOutdoors', 'no-estimate', 'bad', error.message)
    return zone
  }
}

function sumCheck({ houseZone, zoneOutdoors }: ZonePressures, house: number): CheckResult {
  const id = 'zone-sum'
  const sum = Math.abs(houseZone) + Math.abs(zoneOutdoors)
  const within = Math.max(SUM_WITHIN.pascal, SUM_WITHIN.share * house)
  const found = `${short(sum, 3)} Pa`
  const expected = say`${short(house, 3)} Pa, within ${short(within, 2)} Pa`
  if (Math.abs(sum - house) <= within) {
    return { id, outcome: 'good', text: say`Both pressures add up to that of the house.`, found, expected }
  }
  const text = say`The two pressures must add up to the pressure between house and outdoors. Check where each hose ends, and measure all three again.`
  return { id, outcome: 'doubtful', text, found, expected }
}
