/** Plans, fills and undo in a real Chromium: pages that change under them, controls that fit equally well, a stop. */
import type { Browser } from 'puppeteer-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Material } from '../../lib/form/material.ts'
import type { Binding, Clues, PlanLine, ReceiptLine } from '../../lib/form/schema.ts'
import { bind, fillIn, material, page, summary } from './bind.ts'
import { Bench, bundle, startBrowser } from './isolated.ts'

let browser: Browser
let form: string

beforeAll(async () => {
  ;[browser, form] = await Promise.all([startBrowser(), bundle('../pages/controls/bench.ts', 'bench')])
})

afterAll(() => browser?.close())

describe('a page that draws its form anew', () => {
  test('controls are found again after each change, also those that appear or get their options later', async () => {
    const bench = await Bench.open(browser, form, await page('redrawn'))
    const known = await bench.call<Clues[]>('clues')
    const base = { kind: 'select' as const, section: 'Work', placeholder: '', position: 0 }
    const bindings: Binding[] = [
      {
        id: 'weather',
        control: {
          ...base,
          name: 'Weather',
          attributes: { 'data-name': 'weather' },
          options: ['Select', 'Calm', 'Windy'],
        },
        source: { from: 'text', text: 'Calm' },
      },
      {
        id: 'crew',
        control: { ...base, name: 'Crew', attributes: { 'data-name': 'crew' }, options: ['Select', 'North', 'South'] },
        source: { from: 'text', text: 'South' },
      },
      ...(await bind(bench, {
        Town: 'Marrowby',
        'CFM50 | Before work': '1445',
        'CFM50 | After work': '754',
        Stage: 'Final',
      })),
    ]
    expect(known.every(({ attributes }) => attributes['id'] === undefined)).toBe(true)
    const { lines } = await bench.call<{ lines: PlanLine[] }>('makePlan', bindings, material)
    expect(lines.map(({ binding, state, note }) => `${binding}: ${state}${note && ` (${note})`}`))
      .toMatchInlineSnapshot(`
      [
        "weather: not found (looked for again during the fill)",
        "crew: to enter (the list is still empty; looked for again during the fill)",
        "Town: to enter",
        "CFM50 | Before work: to enter",
        "CFM50 | After work: to enter",
        "Stage: to enter",
      ]
    `)
    const receipts = await bench.call<ReceiptLine[]>('runFill')
    expect(summary(receipts)).toMatchInlineSnapshot(`
      {
        "CFM50 | After work": "entered: 754",
        "CFM50 | Before work": "entered: 1445",
        "Stage": "entered: Final",
        "Town": "entered: Marrowby",
        "crew": "entered: South",
        "weather": "entered: Calm",
      }
    `)
    expect(await bench.page.evaluate('model')).toEqual({
      town: 'Marrowby',
      before: '1445',
      after: '754',
      stage: 'Final',
      weather: 'Calm',
      crew: 'South',
    })
    await bench.page.close()
  })
})

describe('two controls that fit equally well', () => {
  const twice =
    '<!doctype html><h3>Tester</h3><label>Licence number <input></label><label>Licence number <input></label>'

  test('nothing is typed until the person says which', async () => {
    const bench = await Bench.open(browser, form, twice)
    const bindings = await bind(bench, { 'Licence number': 'T-0442' })
    const { lines } = await bench.call<{ lines: PlanLine[] }>('makePlan', bindings, material)
    expect(lines[0]).toMatchObject({ state: 'ambiguous', note: '2 controls fit equally well: say which' })
    expect(summary(await bench.call<ReceiptLine[]>('runFill'))).toEqual({
      'Licence number': 'ambiguous:  (2 controls fit equally well)',
    })
    const values = () => bench.page.$$eval('input', (inputs) => inputs.map(({ value }) => value))
    expect(await values()).toEqual(['', ''])
    await bench.call('pickCandidate', 'Licence number', 1, material)
    expect(summary(await bench.call<ReceiptLine[]>('runFill'))).toEqual({ 'Licence number': 'entered: T-0442' })
    expect(await values()).toEqual(['', 'T-0442'])
    await bench.page.close()
  })

  test('one control is never given to two bindings', async () => {
    const bench = await Bench.open(browser, form, '<!doctype html><label>Licence number <input></label>')
    const [first] = await bind(bench, { 'Licence number': 'T-0442' })
    if (!first) throw new Error('The page shows no control.')
    const weaker = {
      ...first,
      id: 'weaker',
      control: { ...first.control, name: 'Licence', attributes: { name: 'licence' } },
    }
    const states = async (bindings: Binding[]) =>
      (await bench.call<{ lines: PlanLine[] }>('makePlan', bindings, material)).lines.map(({ state }) => state)
    expect(await states([first])).toEqual(['to enter'])
    expect(await states([first, { ...first, id: 'again' }])).toEqual(['ambiguous', 'ambiguous'])
    expect(await states([weaker, first])).toEqual(['not found', 'to enter'])
    await bench.page.close()
  })

  test('the legend tells them apart, and when it changed nothing is guessed', async () => {
    const bench = await Bench.open(browser, form, await page('plain'))
    const clues = await bench.call<Clues[]>('clues')
    const before = clues.find(({ attributes }) => attributes['id'] === 'cfm-before') as Clues
    const withoutId = { ...before, attributes: {} }
    expect(await bench.call('found', withoutId)).toBe('found cfm-before')
    await bench.page.$eval('#before legend', (legend) => legend.replaceChildren('Heating season'))
    expect(await bench.call('found', withoutId)).toBe('not found, nearest cfm-before')
    expect(await bench.call('found', before)).toBe('found cfm-before')
    await bench.page.$eval('#before', (fieldset) => fieldset.remove())
    expect(await bench.call('found', before)).toMatch(/^not found/)
    await bench.page.close()
  })
})

describe('filling', () => {
  test('what is already there is left alone, what the person left out is not touched', async () => {
    const bench = await Bench.open(browser, form, await page('plain'))
    const bindings = await bind(bench, {
      'Attic sealed': 'checked',
      'Street address': 'x',
      'Conditioned floor area (sq ft)': '',
    })
    const area = bindings[2] as Binding
    area.source = { from: 'item', item: 'job/floorArea', write: { unit: 'ft2', decimals: 0 } }
    const items: Material['items'] = {
      'job/floorArea': {
        kind: 'quantity',
        label: 'floor area',
        group: 'building',
        value: 1800,
        unit: 'ft2',
        decimals: 0,
      },
    }
    const { lines } = await bench.call<{ lines: PlanLine[] }>('makePlan', bindings, { ...material, items })
    expect(lines.map(({ state, text, now }) => [state, text, now])).toEqual([
      ['already there', 'checked', 'checked'],
      ['to enter', 'x', ''],
      ['already there', '1800', '1,800'],
    ])
    const receipts = await bench.call<ReceiptLine[]>('runFill', ['Attic sealed', 'Conditioned floor area (sq ft)'])
    expect(summary(receipts)).toEqual({
      'Attic sealed': 'entered: checked (was already there, left as it is)',
      'Conditioned floor area (sq ft)': 'entered: 1,800 (was already there, left as it is)',
    })
    expect(await bench.page.evaluate('seen')).toEqual([])
    await bench.page.close()
  })

  test('undo puts back what was there, except where a hand has been since', async () => {
    const bench = await Bench.open(browser, form, await page('plain'))
    await fillIn(bench, {
      'Street address': '14 Tannery Row',
      'Conditioned floor area (sq ft)': '1860',
      'Range | C1. Before work': 'wide',
      'Attic sealed': 'not checked',
      'Date of test | C1. Before work': '2026-01-12',
      Result: 'Pass',
    })
    await bench.page.$eval('#street', (input) => (input as HTMLInputElement).select())
    await bench.page.type('#street', '16 Tannery Row')
    expect(summary(await bench.call<ReceiptLine[]>('runUndo'))).toMatchInlineSnapshot(`
      {
        "Attic sealed": "entered: checked",
        "Conditioned floor area (sq ft)": "entered: 1,800",
        "Date of test | C1. Before work": "entered: ",
        "Range | C1. Before work": "entered: Select",
        "Result": "refused: Pass (one of the choices stays chosen: choose the right one, or load the page anew)",
        "Street address": "refused: 16 Tannery Row (changed since the fill, left as it is)",
      }
    `)
    await bench.page.close()
  })

  test('a stop leaves the rest untouched and says so', async () => {
    const bench = await Bench.open(browser, form, await page('plain'))
    await bench.call(
      'makePlan',
      await bind(bench, { 'Street address': 'a', 'Application number': 'b', Comments: 'c' }),
      material,
    )
    expect(summary(await bench.call<ReceiptLine[]>('stoppedFill', 1))).toEqual({
      'Street address': 'entered: a',
      'Application number': 'refused:  (stopped before this control)',
      Comments: 'refused:  (stopped before this control)',
    })
    expect(await bench.page.$eval('#comments', (area) => (area as HTMLTextAreaElement).value)).toBe('')
    await bench.page.close()
  })

  test('a line is reported at once, and again when the page changes the control later', async () => {
    const bench = await Bench.open(browser, form, await page('masks'))
    await fillIn(bench, { Late: '12', Plain: '7' })
    expect((await bench.call<ReceiptLine[]>('reported')).map(({ binding, readBack }) => [binding, readBack])).toEqual([
      ['Late', '12'],
      ['Plain', '7'],
      ['Late', '12 checked'],
    ])
    await bench.page.close()
  })
})
