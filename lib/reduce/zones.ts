/** Attics, garages and other zones between house and outdoors, from pressures while the house is held at 50 Pa. */
import type { CheckResult, Step } from './report.ts'
import { named, short } from './say.ts'
import { say } from '../words/say.ts'

/** Below this a pressure says little about the ratio, Pa: common practice, no source. */
const least = 5

export interface ZonePressures {
  /** Across house and zone, and across zone and outdoors, Pa; signs do not matter. */
  houseZone: number
  zoneOutdoors: number
  /** Of both leak paths, 0.65 when left out. */
  exponent?: number | undefined
}

export interface ZoneRatio {
  /** Leakage between house and zone over that between zone and outdoors. */
  ratio: number
  check: CheckResult
  working: Step[]
}

function usable(values: Record<string, number>): void {
  for (const [name, value] of Object.entries(values)) {
    if (!(value >= 1e-6 && value <= 1e9)) throw new RangeError(say`The ${name} must be a number above zero.`)
  }
}

function pressureCheck(houseZone: number, zoneOutdoors: number): CheckResult {
  const id = 'zone-pressure'
  const found = say`${short(houseZone, 3)} and ${short(zoneOutdoors, 3)} Pa`
  const expected = say`${least} Pa or more across both`
  if (Math.min(houseZone, zoneOutdoors) >= least) {
    return { id, outcome: 'good', text: say`Both pressures are large enough to compare.`, found, expected }
  }
  const text = say`A pressure below ${least} Pa says little about the leaks: a small error changes the ratio much. Average for longer, or open a path on the other side and measure again.`
  return { id, outcome: 'doubtful', text, found, expected }
}

/**
 * Ratio of the two leak paths of a zone: the same air passes both, so `C1 / C2 = (p2 / p1)^n`. Source: conservation of mass,
 * taking one exponent for both.
 *
 * @throws RangeError when a pressure or the exponent is not above zero
 * @example zonePressures({ houseZone: 25, zoneOutdoors: 25 }).ratio // 1
 */
export function zonePressures(given: ZonePressures): ZoneRatio {
  const [p1, p2] = [Math.abs(given.houseZone), Math.abs(given.zoneOutdoors)]
  const n = given.exponent ?? 0.65
  usable({ 'pressure between house and zone': p1, 'pressure between zone and outdoors': p2, exponent: n })
  if (n > 2) throw new RangeError(say`The exponent of leaks lies between 0.5 and 1.`)
  const ratio = (p2 / p1) ** n
  return {
    ratio,
    check: pressureCheck(p1, p2),
    working: [
      {
        step: say`Ratio of the leak paths of the zone`,
        formula: 'C1 / C2 = (p2 / p1)^n',
        values: named(['p1', p1, 'Pa'], ['p2', p2, 'Pa'], ['n', n]),
        result: short(ratio),
        source: say`conservation of mass`,
        for: [],
      },
    ],
  }
}

export interface ZoneTest extends ZonePressures {
  /** Flow of the house at `pressure` with the zone closed, and with it opened to the house; in one unit. */
  closed: number
  opened: number
  /** House to outdoors, Pa; 50 when left out. */
  pressure?: number | undefined
}

export interface ZoneLeakage extends ZoneRatio {
  /** Coefficients of house to zone and of zone to outdoors, flow unit per Pa^n. */
  houseToZone: number
  zoneToOutdoors: number
  /** Flows of either path, and of both in series, at the pressure of the house; in the flow unit. */
  houseToZoneFlow: number
  zoneToOutdoorsFlow: number
  throughZoneFlow: number
}

/**
 * Leakage of a zone from two configurations: opened to the house, the zone's leaks to outdoors stand at the full pressure
 * instead of p2, so `C2 = (Q2 − Q1) / (P^n − p2^n)` and `C1 = C2 (p2 / p1)^n`. Source: conservation of mass, derived.
 *
 * @throws RangeError when a number is not above zero, opening brings no more flow, or p2 is not below the house pressure
 * @example zoneLeakage({ closed: 2000, opened: 2400, houseZone: 30, zoneOutdoors: 20 }).zoneToOutdoorsFlow.toFixed(1) // '891.3'
 */
export function zoneLeakage(test: ZoneTest): ZoneLeakage {
  const { closed, opened, pressure = 50 } = test
  const { ratio, check, working } = zonePressures(test)
  const [p2, n] = [Math.abs(test.zoneOutdoors), test.exponent ?? 0.65]
  usable({ 'flow with the zone closed': closed, 'flow with the zone opened': opened, 'house pressure': pressure })
  if (opened <= closed) throw new RangeError(say`Opening the zone must bring more flow: check which flow is which.`)
  if (p2 >= pressure * 0.9999)
    throw new RangeError(say`The zone must stand below the pressure of the house: check both.`)
  const zoneToOutdoors = (opened - closed) / (pressure ** n - p2 ** n)
  const houseToZone = zoneToOutdoors * ratio
  return {
    ratio,
    check,
    zoneToOutdoors,
    houseToZone,
    houseToZoneFlow: houseToZone * pressure ** n,
    zoneToOutdoorsFlow: zoneToOutdoors * pressure ** n,
    throughZoneFlow: zoneToOutdoors * p2 ** n,
    working: [
      {
        step: say`Leaks of the zone to outdoors`,
        formula: 'C2 = (Q2 − Q1) / (P^n − p2^n)',
        values: named(['Q2', opened], ['Q1', closed], ['P', pressure, 'Pa'], ['p2', p2, 'Pa'], ['n', n]),
        result: short(zoneToOutdoors),
        source: say`conservation of mass`,
        for: [],
      },
      ...working,
      {
        step: say`Leaks of the house to the zone`,
        formula: say`C1 = C2 × ratio`,
        values: named(['C2', zoneToOutdoors], [say`ratio`, ratio]),
        result: short(houseToZone),
        source: say`conservation of mass`,
        for: [],
      },
    ],
  }
}
