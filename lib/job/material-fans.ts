/** Several fans that ran together, as a form can be filled with them: each by its number, and the flow of all. */
import type { Item } from '../form/material.ts'
import { decimalsOf } from '../reduce/figures/index.ts'
import { fansIn } from './fans-edit.ts'
import { dateItem, known, quantityItem, textItem } from './material-job.ts'
import { marksAt } from './read.ts'
import type { ReducedTest } from './reduce.ts'
import type { Device, Test } from './schema.ts'
import { term } from '../words/term.ts'

/**
 * Of each fan its name and device; of a result that rests on one point also what was read at each fan. By id, without the
 * role before it: `fan-1-flow`.
 */
export function fanItems(
  test: Test,
  role: string,
  { sheet, points = [] }: ReducedTest,
  devices: readonly Device[],
): Record<string, Item> {
  const { sheet: typed, units } = test
  const fans = typed.fans ?? []
  const used = points.filter((point) => point.used)
  const [only] = used
  const row = used.length === 1 ? only?.row : undefined
  const point = only && row !== undefined ? sheet?.points[points.indexOf(only)] : undefined
  const marks = marksAt(typed, units)
  const items: Record<string, Item | undefined> = {
    'fan-count': {
      kind: 'quantity',
      label: term`number of fans`,
      group: role,
      value: fans.length,
      unit: '1',
      decimals: 0,
    },
    'flow-of-all-fans': point && {
      kind: 'quantity',
      label: term`flow of all fans`,
      group: role,
      value: 'flow' in point ? point.flow : 0,
      unit: units.flow,
      decimals: decimalsOf('flow-50', units.flow),
    },
  }
  for (const [at, fan] of fans.entries()) {
    const number = `fan-${at + 1}`
    const group = `${role}, fan ${at + 1}`
    const device = devices.find(({ id }) => id === fan.device)
    const cells = row === undefined ? undefined : fansIn(typed.points[row]!, fans.length)[at]
    const read = (label: string, key: 'flow' | 'devicePressure', unit: string) => {
      const path = `points.${row}.fans.${at}.${key}`
      return quantityItem(label, group, path, cells?.[key] ?? '', unit, marks(path))
    }
    Object.assign(items, {
      [`${number}-name`]: textItem(term`name of the fan`, group, fan.name),
      [`${number}-device`]: textItem(term`device`, group, device?.name ?? ''),
      [`${number}-device-serial`]: textItem(term`device serial number`, group, device?.serial ?? ''),
      [`${number}-device-calibrated`]: dateItem(term`device calibrated on`, group, device?.calibrated ?? ''),
      [`${number}-flow`]: fan.reading === 'flow' ? read(term`flow as shown`, 'flow', units.flow) : undefined,
      [`${number}-device-pressure`]:
        fan.reading === 'device' ? read(term`device pressure`, 'devicePressure', 'Pa') : undefined,
      [`${number}-range`]: fan.reading === 'device' ? textItem(term`range`, group, cells?.range ?? '') : undefined,
    })
  }
  return known(items)
}
