/** Writes wloc.json: points about invented power laws, as [ln P, ln Q, u of ln P, u of ln Q]. Run once, then wloc.R. */
import { writeFileSync } from 'node:fs'
import { source } from '../drawn.ts'

const { normal, even } = source(77)
const round = (value: number) => Number(value.toPrecision(8))

function points(pressures: readonly number[], pressureNoise: number, flowNoise: number): number[][] {
  const exponent = 0.5 + 0.3 * even()
  return pressures.map((pressure) => {
    const [ux, uy] = [pressureNoise / pressure, flowNoise]
    const x = Math.log(pressure) + ux * normal()
    const y = 4 + exponent * Math.log(pressure) + uy * normal()
    return [x, y, ux, uy].map(round)
  })
}

const few = [60, 48, 36, 24, 12]
const many = [60, 55, 50, 45, 40, 35, 30, 25, 20, 15]
const cases = {
  calm: points(few, 0.2, 0.005),
  breezy: points(many, 0.7, 0.01),
  windy: points(many, 2, 0.02),
  'flow alone': points(many, 0, 0.03),
  'pressure alone': points(few, 1, 0),
  'three points': points([50, 30, 12], 0.7, 0.02),
  'one weight': points(many, 0, 0.02).map(([x, y]) => [x!, y!, 0.02, 0.02]),
  'falling line': points(few, 0.5, 0.02).map(([x, y, ux, uy]) => [x!, -y!, ux!, uy!]),
}
const lines = Object.entries(cases).map(([name, list]) => `  "${name}": ${JSON.stringify(list)}`)
writeFileSync(new URL('wloc.json', import.meta.url), `{\n${lines.join(',\n')}\n}\n`)
