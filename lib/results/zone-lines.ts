/** What a zone comes to, written for the screen. */
import type { ReadZone } from '../job/zones.ts'
import type { TypedUnits } from '../job/schema.ts'
import { decimalsOf } from '../reduce/figures/index.ts'
import { short } from '../reduce/say.ts'
import type { FigureLine } from './shown.ts'
import { halfUp } from './lines.ts'
import { flowWords } from './unit-words.ts'
import { say } from '../words/say.ts'

const RATIO_DECIMALS = 2

export function zoneLines({ ratio, leakage, house }: ReadZone, at: number, flow: TypedUnits['flow']): FigureLine[] {
  const bare = { margin: '', interval: '' }
  const lines: FigureLine[] = []
  if (ratio) {
    lines.push({
      ...bare,
      id: `zone-${at}-ratio`,
      name: say`Leak ratio`,
      detail: say`house to zone over zone to outdoors`,
      value: halfUp(ratio.ratio, RATIO_DECIMALS),
      unit: '',
      note: say`Below 1 the zone is tighter towards the house than towards outdoors.`,
      steps: ratio.working,
    })
  }
  if (!leakage) return lines
  const decimals = decimalsOf('flow-50', flow)
  const flows = [
    [say`House to zone`, leakage.houseToZoneFlow, 'C1 × P^n'],
    [say`Zone to outdoors`, leakage.zoneToOutdoorsFlow, 'C2 × P^n'],
    [say`Through the zone`, leakage.throughZoneFlow, say`C2 × p2^n, what passes both while the zone is closed`],
  ] as const
  for (const [name, value, note] of flows) {
    lines.push({
      ...bare,
      id: `zone-${at}-${name.toLowerCase().replaceAll(' ', '-')}`,
      name,
      detail: say`at ${short(house, 3)} Pa`,
      value: halfUp(value, decimals),
      unit: flowWords[flow],
      note,
      steps: leakage.working,
    })
  }
  return lines
}
