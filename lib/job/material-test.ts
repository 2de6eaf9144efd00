/** The figures and fields of a test that a form can be filled with. */
import type { Item } from '../form/material.ts'
import { baselineOf } from '../reduce/baseline.ts'
import { unitAt } from './cells.ts'
import { figureItems } from './material-figures.ts'
import { choiceItem, dateItem, known, quantityItem, textItem } from './material-job.ts'
import { fanItems } from './material-fans.ts'
import { choices } from './options.ts'
import { marksAt } from './read.ts'
import type { ReducedTest } from './reduce.ts'
import type { Device, Test } from './schema.ts'
import type { KnownTest } from './together.ts'
import { judge } from './house-limit.ts'
import { term } from '../words/term.ts'

type Items = Record<string, Item>

/** By id, without the role before it. */
export function testItems({ test, of, key: role, reduced }: KnownTest, devices: Device[]): Items {
  const { sheet: typed, units } = test
  const { report } = reduced
  const marks = marksAt(typed, units)
  const typedNumber = (label: string, path: string, text: string) =>
    quantityItem(label, role, path, text, unitAt(path, units), marks(path))
  return {
    ...(report && figureItems(role, report.figures, judge(of, test, report.figures))),
    ...known({
      date: dateItem(term`date of test`, role, test.date),
      direction: choiceItem(term`direction`, role, typed.direction, choices.direction),
      procedure: choiceItem(term`procedure`, role, typed.procedure, choices.procedure),
      stage: choiceItem(term`stage`, role, test.stage, choices.stage),
      wind: choiceItem(term`wind`, role, test.wind, choices.wind),
      leakage:
        typed.subject === 'ducts' ? choiceItem(term`leakage`, role, typed.ductLeakage, choices.leakage) : undefined,
      indoor: typedNumber(term`indoor temperature`, 'indoor', typed.indoor),
      outdoor: typedNumber(term`outdoor temperature`, 'outdoor', typed.outdoor),
      'air-handler-flow':
        typed.subject === 'ducts'
          ? typedNumber(term`air handler flow`, 'airHandlerFlow', typed.airHandlerFlow)
          : undefined,
      'floor-area-served':
        typed.subject === 'ducts'
          ? typedNumber(term`floor area served`, 'servedArea', typed.servedArea ?? '')
          : undefined,
      'instrument-figure': typedNumber(term`instrument’s own figure`, 'instrumentFigure', test.instrumentFigure),
      notes: textItem(term`notes`, role, test.notes),
      ...deviceItems(test, role, devices),
    }),
    ...readingItems(test, role, reduced, devices),
    ...(typed.reading === 'fans' ? fanItems(test, role, reduced, devices) : {}),
  }
}

function deviceItems(test: Test, role: string, devices: Device[]): Record<string, Item | undefined> {
  const device = devices.find(({ id }) => id === test.sheet.device)
  return {
    device: textItem(term`device`, role, device?.name ?? ''),
    'device-serial': textItem(term`device serial number`, role, device?.serial ?? ''),
    'device-calibrated': dateItem(term`device calibrated on`, role, device?.calibrated ?? ''),
  }
}

/** What the figures stand on: baseline, range, and after a one-point test the reading that was used. */
function readingItems(test: Test, role: string, { sheet, points }: ReducedTest, devices: Device[]): Items {
  if (sheet === undefined || points === undefined) return {}
  const { before, after } = sheet.baseline
  const used = points.filter((point) => point.used)
  const [only] = used
  const typed = only === undefined ? undefined : test.sheet.points[only.row]
  const names = [...new Set(used.map(({ row }) => test.sheet.points[row]?.range.trim() ?? ''))].filter(
    (name) => name !== '',
  )
  const number = (label: string, field: 'pressure' | 'flow' | 'devicePressure') =>
    typed !== undefined && used.length === 1
      ? quantityItem(
          label,
          role,
          `points.${only?.row}.${field}`,
          typed[field],
          field === 'flow' ? test.units.flow : 'Pa',
          marksAt(test.sheet, test.units)(`points.${only?.row}.${field}`),
        )
      : undefined
  return known({
    'baseline-mean':
      before.length + after.length === 0
        ? undefined
        : {
            kind: 'quantity',
            label: term`baseline, mean`,
            group: role,
            value: baselineOf(sheet.baseline).mean,
            unit: 'Pa',
            decimals: 1,
          },
    range: rangeItem(test, role, names, devices),
    pressure: number(term`pressure as read`, 'pressure'),
    'flow-as-shown': test.sheet.reading === 'flow' ? number(term`flow as shown`, 'flow') : undefined,
    'device-pressure': test.sheet.reading === 'device' ? number(term`device pressure`, 'devicePressure') : undefined,
  })
}

/** One range is a choice among those of the device; several stand in a line. */
function rangeItem(test: Test, role: string, names: string[], devices: Device[]): Item | undefined {
  const [name] = names
  if (name === undefined) return undefined
  if (names.length > 1) return textItem(term`ranges`, role, names.join(', '))
  const device = devices.find(({ id }) => id === test.sheet.device)
  const named = (device?.ranges ?? []).map((range) => range.name.trim()).filter((one) => one !== '')
  const options = [...new Set([...named, name])].map((one) => ({ value: one, label: one }))
  return choiceItem(term`range`, role, name, options)
}
