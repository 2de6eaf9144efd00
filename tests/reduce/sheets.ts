/** Sheets to start a test from. */
import type { Sheet } from '../../lib/sheet/schema.ts'

/** One point in feet, cfm and degF, depressurizing. */
export function fakeSheet(overrides: Partial<Sheet> = {}): Sheet {
  return {
    subject: 'enclosure',
    procedure: 'one-point',
    direction: 'depressurize',
    units: { flow: 'cfm', temperature: 'degF', length: 'ft' },
    baseline: { before: [], after: [] },
    points: [{ pressure: -50, flow: 1000 }],
    flowBasis: 'indicated',
    ...overrides,
  }
}

/** Six points on a line with the exponent 0.65, each off by a fraction. */
export function fakeRegression(overrides: Partial<Sheet> = {}, off = [0.01, -0.01, 0.005, 0, -0.005, 0.004]): Sheet {
  const points = [60, 50, 40, 30, 20, 12].map((pressure, index) => ({
    pressure: -pressure,
    flow: 80 * pressure ** 0.65 * (1 + (off[index] ?? 0)),
  }))
  return fakeSheet({ procedure: 'astm-e779', points, ...overrides })
}

/** Every cell that a figure can need. */
export const wholeBuilding: NonNullable<Sheet['building']> = {
  volume: 20_400,
  floorArea: 2400,
  enclosureArea: 6000,
  enclosureAreaWithoutFloor: 5000,
  height: 17,
  bedrooms: 3,
  stories: 2,
}
