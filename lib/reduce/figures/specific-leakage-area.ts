import { convert } from '../../units/convert.ts'
import { named } from '../say.ts'
import { effectiveLeakageArea } from './effective-leakage-area.ts'
import type { Figure } from './figure.ts'
import { say } from '../../words/say.ts'

export const specificLeakageArea: Figure = {
  id: 'specific-leakage-area',
  label: 'SLA',
  name: say`specific leakage area`,
  group: 'leakage areas',
  subject: 'enclosure',
  decimals: { '1': 5, '%': 3 },
  needs: ['floorArea'],
  formula: say`SLA = ELA / floor area`,
  source: say`ANSI 301 (from memory)`,
  compute: ({ of, units }, { floorArea }) => {
    const { value, unit, uncertainty, note } = of(effectiveLeakageArea)
    const areaUnit = `${units.length}2`
    const area = convert(value, unit, areaUnit)
    return {
      value: area / floorArea,
      unit: '1',
      uncertainty,
      sized: true,
      note,
      values: () => named(['ELA', area, areaUnit], [say`floor area`, floorArea, areaUnit]),
    }
  },
}
