/** Every field of pages built with component libraries: right in the page's own state, or the person is told. */
import type { Browser } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Material } from '../../lib/form/material.ts'
import type { Clues, ReceiptLine } from '../../lib/form/schema.ts'
import { buildPage } from '../pages/frameworks/build.ts'
import { pages } from '../pages/frameworks/pages.ts'
import { bind, material, summary } from './bind.ts'
import { Bench, bundle, startBrowser } from './isolated.ts'

let browser: Browser
let form: string
const only = process.env['PAGES']?.split(',')

beforeAll(async () => {
  ;[browser, form] = await Promise.all([startBrowser(), bundle('../pages/controls/bench.ts', 'bench')])
})

afterAll(() => browser?.close())

interface Told {
  control: string
  kind: string
  intended: string
  outcome: string
  note: string
  readBack: string
  right: boolean
}

export interface Row {
  page: string
  told: Told[]
}

const rows: Row[] = []

for (const { name, entry, fields } of pages.filter((each) => !only || only.some((one) => each.name.includes(one)))) {
  test(`every field of ${name}`, async () => {
    const { script, style } = await buildPage(entry)
    const bench = await Bench.open(
      browser,
      form,
      `<!doctype html><html lang="en-US"><head><style>${style}</style></head><body></body></html>`,
      script,
    )
    await bench.page.waitForFunction('window.pageState !== undefined && document.querySelector("input") !== null', {
      polling: 50,
    })
    const clues = await bench.call<Clues[]>('clues')
    const missing = fields.filter((each) => !clues.some((clue) => clue.name === each.name))
    const left = await bench.call<unknown>('leftOut')
    expect({ missing: missing.map((each) => each.name), listed: missing.length > 0 && clues, left }).toMatchObject({
      missing: [],
    })
    await bench.call(
      'makePlan',
      await bind(bench, Object.fromEntries(fields.map((each) => [each.name, each.text]))),
      material,
    )
    const receipts = await bench.call<ReceiptLine[]>('runFill')
    const state = (await bench.page.evaluate('window.pageState()')) as Record<string, unknown>
    const told = fields.map((each): Told => {
      const receipt = receipts.find(({ binding }) => binding === each.name)
      return {
        control: each.name,
        kind: clues.find((clue) => clue.name === each.name)?.kind ?? '',
        intended: each.text,
        outcome: receipt?.outcome ?? '',
        note: receipt?.note ?? '',
        readBack: receipt?.readBack ?? '',
        right: JSON.stringify(state[each.state]) === JSON.stringify(each.holds),
      }
    })
    rows.push({ page: name, told })
    if (process.env['SHOW']) console.log(told, state)
    expect(state['submitted'] || false).toBe(false)
    expect({ wrong: told.filter(({ right }) => !right), state }).toMatchObject({ wrong: [] })
    // The page shows or holds something else than was meant: never called entered.
    const untold = fields.filter(
      (each) =>
        each.told !== (told.find(({ control }) => control === each.name)?.outcome === 'entered' ? undefined : true),
    )
    expect(untold.map((each) => told.find(({ control }) => control === each.name))).toEqual([])
    await bench.page.close()
  })
}

test('a file of the figures goes into a file control', async () => {
  const { script } = await buildPage('aria/main.ts')
  const bench = await Bench.open(browser, form, '<!doctype html><html><body></body></html>', script)
  const figures: Material = {
    job: material.job,
    items: {
      'after/flow-50': { kind: 'quantity', label: 'CFM50', group: 'after', value: 753.6, unit: 'cfm', decimals: 0 },
      'job/address': { kind: 'text', label: 'Address', group: 'building', text: '14 Tannery Row, Marrowby' },
    },
  }
  const clues = await bench.call<Clues[]>('clues')
  const control = clues.find(({ kind }) => kind === 'file')
  if (!control) throw new Error('The page shows no file control.')
  const source = { from: 'file', name: 'figures.csv', type: 'text/csv' }
  await bench.call('makePlan', [{ id: 'report', control, source }], figures)
  expect(summary(await bench.call<ReceiptLine[]>('runFill'))).toEqual({ report: 'entered: figures.csv' })
  expect(await bench.page.evaluate('window.pageState().report')).toBe(
    'figures.csv text/csv group,item,value,unit\r\nafter,CFM50,754,cfm\r\nbuilding,Address,"14 Tannery Row, Marrowby",\r\n',
  )
  await bench.page.close()
})

// A run of some pages only would not show them all.
test.skipIf(only)('the table of the README is what the pages did', async () => {
  const shown = rows.map(({ page, told }) => ({
    page,
    controls: told.map(({ control, kind, outcome, right }) => ({
      control,
      kind,
      is: outcome === 'entered' && right ? 'right' : outcome === 'entered' ? 'silently wrong' : 'told',
    })),
  }))
  expect(JSON.stringify(shown)).not.toContain('silently wrong')
  await expect(`${JSON.stringify(shown, null, 2)}\n`).toMatchFileSnapshot('../pages/frameworks/results.json')
  const width = Math.max(...shown.map(({ page }) => page.length))
  for (const { page, controls } of shown)
    console.log(page.padEnd(width), controls.map(({ control, is }) => `${control}: ${is}`).join(', '))
})
