/** What must hold for drawn controls whatever library draws them: told the truth, nothing submitted, no trap taken. */
import { readFileSync } from 'node:fs'
import type { Browser } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Material } from '../../lib/form/material.ts'
import type { Binding, Clues, ReceiptLine } from '../../lib/form/schema.ts'
import { buildPage } from '../pages/frameworks/build.ts'
import { bind, fillIn, material, summary } from './bind.ts'
import { Bench, bundle, startBrowser } from './isolated.ts'

let browser: Browser
let form: string

beforeAll(async () => {
  ;[browser, form] = await Promise.all([startBrowser(), bundle('../pages/controls/bench.ts', 'bench')])
})

afterAll(() => browser?.close())

const boxes =
  '<!doctype html><fieldset><legend>Date of test</legend><label>Month <input name="m"></label><label>Day <input name="d"></label><label>Year <input name="y"></label></fieldset>'

test('a date in three boxes is one control, and maps that bind each box by itself stay valid', async () => {
  const bench = await Bench.open(browser, form, boxes)
  const clues = await bench.call<Clues[]>('clues')
  expect(clues.map(({ kind, name }) => `${name} / ${kind}`)).toEqual(['Date of test / date-boxes'])
  const old: Binding[] = ['Month', 'Day', 'Year'].map((name, position) => ({
    id: name,
    control: {
      kind: 'text',
      name,
      section: 'Date of test',
      attributes: { name: name.charAt(0).toLowerCase() },
      placeholder: '',
      options: [],
      position,
    },
    source: { from: 'text', text: ['2', '11', '2026'][position] ?? '' },
  }))
  await bench.call('makePlan', old, material)
  expect(summary(await bench.call<ReceiptLine[]>('runFill'))).toEqual({
    Month: 'entered: 2',
    Day: 'entered: 11',
    Year: 'entered: 2026',
  })
  await bench.call('makePlan', await bind(bench, { 'Date of test': '2026-03-12' }), material)
  expect(summary(await bench.call<ReceiptLine[]>('runFill'))).toEqual({ 'Date of test': 'entered: 2026-03-12' })
  expect(await bench.page.$$eval('input', (inputs) => inputs.map(({ value }) => value))).toEqual(['03', '12', '2026'])
  await bench.page.close()
})

test('a box that shows one thing while its hidden list holds another is told, not trusted', async () => {
  const bench = await Bench.open(
    browser,
    form,
    `<!doctype html><form><label id="l">Range</label>
    <div><select tabindex="-1" aria-hidden="true" style="position: absolute; opacity: 0; width: 1px"><option value="a">wide range</option><option value="b">middle range</option></select>
    <div role="combobox" tabindex="0" id="box" aria-haspopup="listbox" aria-controls="list" aria-labelledby="l">wide range</div></div></form>
    <ul role="listbox" id="list" hidden><li role="option">wide range</li><li role="option">middle range</li></ul>
    <script>
      box.onclick = () => (list.hidden = false)
      for (const option of list.children) option.onclick = () => { box.textContent = option.textContent; list.hidden = true }
    </script>`,
  )
  expect(await fillIn(bench, { Range: 'middle range' })).toEqual({
    Range: 'differs: middle range (the page shows “middle range” but would submit “wide range”)',
  })
  await bench.page.close()
})

test('nothing is submitted, whether by a button without a type or by a page that submits at Enter', async () => {
  const bench = await Bench.open(
    browser,
    form,
    `<!doctype html><form id="form"><button role="switch" aria-checked="false" aria-label="Fan" id="fan">off</button>
    <label>Tags <input id="tags" placeholder="Type and press Enter"></label><span id="list"></span></form>
    <script>
      window.submitted = 0
      form.onsubmit = (event) => { event.preventDefault(); window.submitted++ }
      fan.onclick = () => fan.setAttribute('aria-checked', 'true')
      tags.onkeydown = (event) => { if (event.key === 'Enter') form.requestSubmit() }
    </script>`,
  )
  const held = 'the page tried to submit the form at this and was kept from it'
  const result = await fillIn(bench, { Fan: 'checked', Tags: 'attic' })
  expect(result['Fan']).toBe(`entered: checked (${held})`)
  // The page makes no chip of it: the text stands loose in the box, as the receipt says, and the rest is the person's.
  expect(result['Tags']).toMatch(/^differs: attic, .*by hand/)
  expect(await bench.page.evaluate('submitted')).toBe(0)
  await bench.page.evaluate('form.requestSubmit()')
  expect(await bench.page.evaluate('submitted')).toBe(1)
  await bench.page.close()
})

test('what is right already is not toggled, and a tick that nobody can see is never listed', async () => {
  const bench = await Bench.open(
    browser,
    form,
    `<!doctype html><div role="checkbox" tabindex="0" aria-checked="true" aria-label="Attic sealed" style="width: 20px; height: 20px" id="on"></div>
    <div><input type="checkbox" aria-label="Leave open" style="opacity: 0"></div>
    <script>window.clicks = 0; document.onclick = () => window.clicks++</script>`,
  )
  expect((await bench.call<Clues[]>('clues')).map(({ name }) => name)).toEqual(['Attic sealed'])
  expect(await fillIn(bench, { 'Attic sealed': 'checked' })).toEqual({
    'Attic sealed': 'entered: checked (was already there, left as it is)',
  })
  expect(await bench.page.evaluate('clicks')).toBe(0)
  await bench.page.close()
})

test('an option that a list does not have is said, and the field is as it was', async () => {
  const bench = await Bench.open(
    browser,
    form,
    `<!doctype html><label>Town <input role="combobox" aria-autocomplete="list" aria-controls="list" id="town"></label>
    <ul role="listbox" id="list" hidden><li role="option">Marrowby</li></ul>
    <script>town.onfocus = () => (list.hidden = false); town.onblur = () => (list.hidden = true)</script>`,
  )
  expect(await fillIn(bench, { Town: 'Osier Bend' })).toEqual({ Town: 'refused:  (has no option “Osier Bend”)' })
  expect(await bench.page.$eval('#town', (input) => (input as HTMLInputElement).value)).toBe('')
  await bench.page.close()
})

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

test('lists that draw only what is in view are scrolled to the option, and to their end before it is missed', async () => {
  const markup = readFileSync(new URL('../pages/controls/scrolled.html', import.meta.url), 'utf8')
  const bench = await Bench.open(browser, form, markup)
  expect(await fillIn(bench, { Parcel: 'Parcel 287', District: 'District 211', Lot: 'Lot 77' })).toEqual({
    Parcel: 'entered: Parcel 287',
    District: 'entered: District 211',
    Lot: 'entered: Lot 77',
  })
  const model = () => bench.page.evaluate(() => (window as unknown as { model: object }).model)
  expect(await model()).toEqual({ parcel: 'Parcel 287', district: 'District 211', lot: 'Lot 77' })
  const missed = await fillIn(bench, { Parcel: 'Parcel 401', District: 'District 0', Lot: 'Lot 91' })
  for (const [control, text] of Object.entries({ Parcel: 'Parcel 401', District: 'District 0', Lot: 'Lot 91' }))
    expect(missed[control]).toContain(`“${text}”`)
  expect(Object.values(missed).filter((line) => line.startsWith('entered'))).toEqual([])
  expect(await model()).toEqual({ parcel: 'Parcel 287', district: 'District 211', lot: 'Lot 77' })
  await bench.page.close()
})
