/** One figure, one check per file; the file's name is the id. */
import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { checks } from '../../lib/reduce/checks/index.ts'
import { decimalsOf, figures, labelOf } from '../../lib/reduce/figures/index.ts'
import { reduce } from '../../lib/reduce/reduce.ts'
import { unitsLike } from '../../lib/units/convert.ts'
import { fakeRegression, fakeSheet, wholeBuilding } from './sheets.ts'

const filesIn = (folder: string) =>
  readdirSync(fileURLToPath(new URL(`../../lib/reduce/${folder}/`, import.meta.url)))
    .map((file) => file.replace('.ts', ''))
    .toSorted()

test('every figure has a file of its id, and every file its figure', () => {
  const shared = new Set(['as-read', 'fan-needed', 'figure', 'flow-at', 'index', 'leakage-area', 'per-area'])
  expect(figures.map(({ id }) => id).toSorted()).toEqual(filesIn('figures').filter((file) => !shared.has(file)))
})

test('every check has a file of its id, and every file its check', () => {
  expect(checks.map(({ id }) => id).toSorted()).toEqual(
    filesIn('checks').filter((file) => !['check', 'index'].includes(file)),
  )
})

test('every figure knows its decimals in the units it comes in, and every unit can be converted', () => {
  const metric = { flow: 'm3/h', temperature: 'degC', length: 'm' } as const
  for (const units of [fakeSheet().units, metric, { ...metric, flow: 'L/s' as const }]) {
    for (const subject of ['enclosure', 'ducts'] as const) {
      const more = { units, subject, building: wholeBuilding, weatherShieldingFactor: 0.6 }
      const report = reduce(fakeRegression({ ...more, duct: { leakage: 'total', airHandlerFlow: 900 } }))
      for (const [id, { unit }] of Object.entries(report.figures)) {
        expect(figures.find((figure) => figure.id === id)?.decimals, `${id} in ${unit}`).toHaveProperty([unit])
        expect(unitsLike(unit)).toContain(unit)
      }
    }
  }
})

test('labels follow the unit', () => {
  expect([
    labelOf('flow-50', 'cfm'),
    labelOf('flow-50', 'm3/h'),
    labelOf('duct-flow-25', 'cfm'),
    labelOf('duct-flow-25-per-floor-area', 'cfm/100ft2'),
    labelOf('air-changes-50', '1/h'),
    labelOf('no such figure', '1'),
  ]).toEqual(['CFM50', 'Q50', 'CFM25', 'CFM25/100 ft²', 'ACH50', 'no such figure'])
  expect(decimalsOf('flow-50', 'cfm')).toBe(0)
})
