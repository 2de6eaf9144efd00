import { readFileSync } from 'node:fs'
import { expect, expectTypeOf, test } from 'vitest'
import * as engine from '../../lib/engine/index.ts'
import { fakeSheet } from '../reduce/sheets.ts'

test('what the package exports', () => {
  expect(Object.keys(engine).toSorted()).toEqual([
    'ENGINE_VERSION',
    'SheetError',
    'askFactor',
    'beforeAfter',
    'combine',
    'convert',
    'decimalsOf',
    'figures',
    'knownHole',
    'labelOf',
    'limitSchema',
    'limitsFor',
    'meets',
    'ownLimit',
    'points',
    'publishedLimit',
    'publishedLimits',
    'readNumber',
    'reduce',
    'reduction',
    'reportSchema',
    'roundingFlips',
    'sheetSchema',
    'sumSystems',
    'symbol',
    'unitsLike',
    'verdict',
    'workingOf',
    'write',
    'zoneLeakage',
    'zoneNumber',
    'zonePressures',
  ])
  expectTypeOf(engine.reduce).returns.toEqualTypeOf<engine.Report>()
})

test('the version is that of the package', () => {
  const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
    version: string
  }
  expect(engine.ENGINE_VERSION).toBe(version)
})

test('a sheet goes in, a report comes out, and neither is tied to the other', () => {
  const sheet = Object.freeze(fakeSheet())
  const report = engine.reduce(sheet)
  expect(engine.reportSchema.parse(JSON.parse(JSON.stringify(report)))).toEqual(report)
  expect(engine.reduce(sheet)).toEqual(report)
  expect(engine.write(report.figures['flow-50']!.value, { decimals: 0, grouping: true })).toBe('1,000')
})
