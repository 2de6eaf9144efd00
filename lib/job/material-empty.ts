/** What a job could hold and does not: listed while a page is mapped, so that it can be bound before it is typed. */
import type { Item, Material } from '../form/material.ts'
import { subjectOf, figures, labelOf } from '../reduce/figures/index.ts'
import { term } from '../words/term.ts'
import { jobItems, testerItems } from './material-job.ts'
import { testItems } from './material-test.ts'
import { choices } from './options.ts'
import type { Building, Device, Job, Tester } from './schema.ts'
import { knownTests, type KnownTest } from './together.ts'

type Items = Record<string, Item>

/** Stands in each empty cell while the items are listed; it is never shown, kept or entered. */
const sample = '1'
const sampleDay = '2000-01-01'
const device: Device = {
  id: 'none',
  name: sample,
  serial: sample,
  calibrated: sampleDay,
  intervalMonths: '',
  flowUnit: 'cfm',
  calibrationDensity: '',
  ranges: [],
}

/** Every empty cell with a sample in it. */
const filled = <Cells extends Building | Tester>(cells: Cells, samples: Partial<Cells>): Cells => {
  const known = Object.fromEntries(Object.entries(cells).filter(([, text]) => text !== '' && text !== undefined))
  const all = Object.fromEntries(Object.keys(cells).map((key) => [key, sample]))
  return { ...cells, ...all, ...samples, ...known }
}

function emptied(item: Item): Item {
  switch (item.kind) {
    case 'quantity': {
      const { kind, label, group, unit, decimals } = item
      return { kind, label, group, unit, decimals, value: 0, empty: true }
    }
    case 'text':
      return { ...item, text: '' }
    case 'date':
      return { ...item, iso: '' }
    case 'choice':
      return { ...item, value: '' }
  }
}

function ofTest(known: KnownTest, devices: Device[]): Items {
  const { test, key } = known
  const { sheet } = test
  const typed = {
    ...test,
    date: test.date || sampleDay,
    stage: test.stage || ('final' as const),
    wind: test.wind || ('calm' as const),
    instrumentFigure: test.instrumentFigure || sample,
    notes: test.notes || sample,
    sheet: {
      ...sheet,
      indoor: sheet.indoor || sample,
      outdoor: sheet.outdoor || sample,
      airHandlerFlow: sheet.airHandlerFlow || sample,
      servedArea: sheet.servedArea || sample,
      device: devices.some(({ id }) => id === sheet.device) ? sheet.device : device.id,
    },
  }
  const lacking = figures.filter(
    ({ id, subject }) => (subject ?? 'enclosure') === sheet.subject && subjectOf(id) === sheet.subject,
  )
  const ofFigures = lacking.map(({ id, decimals }): [string, Item] => {
    const [unit = '1'] = Object.keys(decimals)
    return [
      id,
      { kind: 'quantity', label: labelOf(id, unit), group: key, value: 0, unit, decimals: decimals[unit] ?? 2 },
    ]
  })
  const verdict: Item = { kind: 'choice', label: term`verdict`, group: key, value: '', options: [...choices.verdict] }
  const all: Items = {
    ...Object.fromEntries(ofFigures),
    verdict,
    ...testItems({ ...known, test: typed }, [...devices, device]),
  }
  return Object.fromEntries(Object.entries(all).map(([id, item]) => [`${key}/${id}`, item]))
}

/** The material with an empty item for whatever the job could hold besides. */
export function withEmpty(given: Material, job: Job, devices: Device[]): Material {
  const building = filled(job.building, { areaSource: 'plans', volumeBasis: 'net', enclosureAreaWithoutFloor: sample })
  const tester = filled(job.tester, { licenceExpiry: sampleDay })
  const possible: Items = { ...jobItems({ ...job, building }), ...testerItems(tester) }
  for (const known of knownTests(job, devices)) Object.assign(possible, ofTest(known, devices))
  const items = { ...given.items }
  for (const [id, item] of Object.entries(possible)) if (!Object.hasOwn(items, id)) items[id] = emptied(item)
  return { ...given, items }
}
