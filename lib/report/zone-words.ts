/** The zones beside the house, written out for the report. */
import type { Test } from '../job/schema.ts'
import { readZone } from '../job/zones.ts'
import { decimalsOf } from '../reduce/figures/index.ts'
import { short } from '../reduce/say.ts'
import { symbol } from '../units/symbol.ts'
import { say } from '../words/say.ts'
import { halfUp, minus } from '../results/lines.ts'
import { wordsInLocale } from '../results/in-locale.ts'

/** So many have room on the page. */
const most = 4

/** One text for each zone whose pressures are typed: pressures, ratio, flows, and what is doubtful about them. */
export function zoneWords({ zones = [], units }: Test, language: string): string[] {
  const all = zones.flatMap((typed, at) => {
    const { pressures, ratio, leakage, house, checks } = readZone(typed, at, units)
    if (!pressures || !ratio) return []
    const name = typed.name.trim().slice(0, 60) || say`Zone ${at + 1}`
    const { houseZone, zoneOutdoors } = pressures
    const [p1 = '', p2 = '', held = ''] = [houseZone, zoneOutdoors, house].map((value) => minus(short(value, 3)))
    const parts = [
      say`${name}: ${p1} Pa between house and zone, ${p2} Pa between zone and outdoors, the house at ${held} Pa.`,
      say`Leak ratio, house to zone over zone to outdoors: ${halfUp(ratio.ratio, 2)}.`,
    ]
    if (leakage) {
      const flow = (value: number) => `${halfUp(value, decimalsOf('flow-50', units.flow))} ${symbol(units.flow)}`
      const { houseToZoneFlow, zoneToOutdoorsFlow, throughZoneFlow } = leakage
      parts.push(
        say`At ${held} Pa house to zone ${flow(houseToZoneFlow)}, zone to outdoors ${flow(zoneToOutdoorsFlow)}; through the zone ${flow(throughZoneFlow)}.`,
      )
    }
    return [[...parts, ...checks.filter(({ outcome }) => outcome !== 'good').map(({ text }) => text)].join(' ')]
  })
  const words = all.length > most ? [...all.slice(0, most), say`${all.length - most} more zones are in the job.`] : all
  return wordsInLocale(words, language)
}
