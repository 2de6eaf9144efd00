/** lib/form in a real Chromium: in a world of its own beside the page, as a content script runs. */
import type { Browser } from 'puppeteer-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Binding, Clues } from '../../lib/form/schema.ts'
import { fillIn, material, page } from './bind.ts'
import { Bench, bundle, startBrowser } from './isolated.ts'

let browser: Browser
let form: string
let react: string

beforeAll(async () => {
  ;[browser, form, react] = await Promise.all([
    startBrowser(),
    bundle('../pages/controls/bench.ts', 'bench'),
    bundle('../pages/controls/controlled.tsx', 'controlled', 'development'),
  ])
})

afterAll(() => browser?.close())

describe('listing', () => {
  test('lists what a person can see and use, with names and sections, through frames and open roots', async () => {
    const bench = await Bench.open(browser, form, await page('plain'))
    const clues = await bench.call<Clues[]>('clues')
    expect(clues.map(({ kind, section, name }) => `${section} / ${name} / ${kind}`)).toMatchInlineSnapshot(`
      [
        "Property / Street address / text",
        "Property / Conditioned floor area (sq ft) / text",
        "Property / Application number / text",
        "Property / Comments / textarea",
        "C1. Before work / Date of test / date",
        "C1. Before work / CFM at 50 Pa / number",
        "C1. Before work / Range / select",
        "C2. After work / Date of test / text",
        "C2. After work / CFM at 50 Pa / text",
        "C2. After work / Result / radio",
        "C2. After work / Mechanical ventilation present / checkbox",
        "C2. After work / Attic sealed / checkbox",
        "Not for filling / Report / file",
        "Not for filling / Weight / slider",
        "Not for filling / Several / multiple",
        " / Indoor temperature / text",
        "Weather / Outdoor temperature (°F) / text",
      ]
    `)
    expect(clues.find(({ kind }) => kind === 'radio')?.options).toEqual(['Pass', 'Fail'])
    await bench.page.close()
  })

  test('names controls as a reader would, with and without labels', async () => {
    const bench = await Bench.open(browser, form, await page('names'))
    const controls = await bench.call<{ is: string; got: string }[]>('named')
    expect(controls.map(({ got }) => got)).toEqual(controls.map(({ is }) => is))
    expect(controls).toHaveLength(await bench.page.$$eval('[data-is]', (elements) => elements.length))
    await bench.page.close()
  })

  test('a page of six hundred controls is listed and planned within two seconds each', async () => {
    const rows = Array.from({ length: 200 }, (_, at) => {
      const cells = ['CFM50', 'ACH50', 'Date'].map((name) => `<label>${name} <input name="${name}_row${at}"></label>`)
      return `<fieldset><legend>Unit ${at + 1}</legend>${cells.join('')}</fieldset>`
    })
    const bench = await Bench.open(browser, form, `<!doctype html>${rows.join('')}`)
    const clues = await bench.call<Clues[]>('clues')
    const bindings = clues
      .filter((_, at) => at % 12 === 0)
      .map((control, at): Binding => ({ id: `b${at}`, control, source: { from: 'text', text: 'x' } }))
    const { count, list, plan } = await bench.call<{ count: number; list: number; plan: number }>(
      'duration',
      bindings,
      material,
    )
    expect([count, bindings.length]).toEqual([600, 50])
    expect(list).toBeLessThan(2000)
    expect(plan).toBeLessThan(2000)
    await bench.page.close()
  })

  test('leaves out everything else, with the reason', async () => {
    const bench = await Bench.open(browser, form, await page('plain'))
    const left = await bench.call<{ name: string; reason: string; detail: string }[]>('leftOut')
    expect(left.map(({ name, reason, detail }) => `${name}: ${[reason, detail].filter(Boolean).join(', ')}`))
      .toMatchInlineSnapshot(`
        [
          "Password: password",
          "Card number: payment",
          "Locked: readonly",
          "Closed: disabled",
          "Website: hidden, transparent",
          "Fax: hidden, off the page",
          "Nickname: hidden, in a collapsed part",
          "Gone: hidden, not displayed",
          "Unseen: hidden, not displayed",
          "I certify that the above is true: left to you",
          "Signature: left to you",
        ]
      `)
    await bench.page.close()
  })
})

describe('writing', () => {
  test('a plain page hears what it hears when a person types', async () => {
    const bench = await Bench.open(browser, form, await page('plain'))
    const result = await fillIn(bench, {
      'Street address': '14 Tannery Row',
      'CFM at 50 Pa | C1. Before work': '1445',
      'Date of test | C1. Before work': '2026-01-12',
      Comments: 'two\nlines',
      'Range | C1. Before work': 'middle',
      Result: 'Pass',
      'Mechanical ventilation present': 'checked',
    })
    expect(result).toMatchInlineSnapshot(`
      {
        "CFM at 50 Pa | C1. Before work": "entered: 1445",
        "Comments": "entered: two
      lines",
        "Date of test | C1. Before work": "entered: 2026-01-12",
        "Mechanical ventilation present": "entered: checked",
        "Range | C1. Before work": "entered: middle",
        "Result": "entered: Pass",
        "Street address": "entered: 14 Tannery Row",
      }
    `)
    expect(await bench.page.evaluate('seen')).toMatchInlineSnapshot(`
      [
        "street focusin: ",
        "street beforeinput (sent): ",
        "street input: 14 Tannery Row",
        "street keyup (sent): 14 Tannery Row",
        "street change: 14 Tannery Row",
        "street focusout: 14 Tannery Row",
        "cfm-before focusin: ",
        "cfm-before keydown (sent): ",
        "cfm-before beforeinput (sent): ",
        "cfm-before input: 1",
        "cfm-before keyup (sent): 1",
        "cfm-before keydown (sent): 1",
        "cfm-before beforeinput (sent): 1",
        "cfm-before input: 14",
        "cfm-before keyup (sent): 14",
        "cfm-before keydown (sent): 14",
        "cfm-before beforeinput (sent): 14",
        "cfm-before input: 144",
        "cfm-before keyup (sent): 144",
        "cfm-before keydown (sent): 144",
        "cfm-before beforeinput (sent): 144",
        "cfm-before input: 1445",
        "cfm-before keyup (sent): 1445",
        "cfm-before change: 1445",
        "cfm-before focusout: 1445",
        "date-before focusin: ",
        "date-before input (sent): 2026-01-12",
        "date-before change (sent): 2026-01-12",
        "date-before focusout: 2026-01-12",
        "comments focusin: ",
        "comments beforeinput (sent): ",
        "comments input: two
      lines",
        "comments input: two
      lines",
        "comments input: two
      lines",
        "comments keyup (sent): two
      lines",
        "comments change: two
      lines",
        "comments focusout: two
      lines",
        "range-before focusin: ",
        "range-before input (sent): 1",
        "range-before change (sent): 1",
        "range-before focusout: 1",
        "pass focusin: false",
        "pass click (sent): true",
        "pass input: true",
        "pass change: true",
        "pass focusout: true",
        "ventilation focusin: false",
        "ventilation click (sent): true",
        "ventilation input: true",
        "ventilation change: true",
        "ventilation focusout: true",
      ]
    `)
    expect(await bench.page.evaluate('submitted')).toBe(0)
    await bench.page.close()
  })

  test('frames and open roots are written like the page itself', async () => {
    const bench = await Bench.open(browser, form, await page('plain'))
    const result = await fillIn(bench, { 'Indoor temperature': '68', 'Outdoor temperature (°F)': '41' })
    expect(result).toEqual({ 'Indoor temperature': 'entered: 68', 'Outdoor temperature (°F)': 'entered: 41' })
    await bench.page.close()
  })

  test('a window in the background gets the same events, sent where the browser sends none', async () => {
    const bench = await Bench.open(browser, form, await page('plain'))
    const front = await browser.newPage()
    await front.bringToFront()
    expect(await bench.page.evaluate('document.hasFocus()')).toBe(false)
    const result = await fillIn(bench, { 'Street address': '14 Tannery Row', 'CFM at 50 Pa | C1. Before work': '1445' })
    expect(result).toEqual({
      'Street address': 'entered: 14 Tannery Row',
      'CFM at 50 Pa | C1. Before work': 'entered: 1445',
    })
    const seen = (await bench.page.evaluate('seen')) as string[]
    expect(seen.map((line) => line.replace(' (sent)', '').replace(/:.*/, ''))).toEqual([
      'street focusin',
      'street beforeinput',
      'street input',
      'street keyup',
      'street change',
      'street focusout',
      'cfm-before focusin',
      ...[...'1445'].flatMap(() => ['keydown', 'beforeinput', 'input', 'keyup'].map((type) => `cfm-before ${type}`)),
      'cfm-before change',
      'cfm-before focusout',
    ])
    await front.close()
    await bench.page.close()
  })

  test('a page whose framework tracks values takes them into its own state', async () => {
    const bench = await Bench.open(browser, form, '<!doctype html><body></body>', react)
    const result = await fillIn(bench, {
      'Street address': '14 Tannery Row',
      CFM50: '754',
      'Test date': '2026-02-11',
      Comments: 'attic hatch weatherstripped',
      Range: 'middle',
      Result: 'Fail',
      'Attic sealed': 'checked',
      'Digits only': 'T-0442',
      Fixed: 'something else',
    })
    expect(await bench.page.evaluate('state')).toEqual({
      street: '14 Tannery Row',
      flow: '754',
      date: '2026-02-11',
      comments: 'attic hatch weatherstripped',
      range: 'b',
      result: 'Fail',
      sealed: true,
      digits: '0442',
      fixed: 'kept',
    })
    // Why it works: the framework keeps its memory of the value on the page's own view of the element.
    const own = "Object.hasOwn(document.getElementById('street'), 'value')"
    expect([await bench.page.evaluate(own), await bench.evaluate(own)]).toEqual([true, false])
    expect(result).toMatchInlineSnapshot(`
      {
        "Attic sealed": "entered: checked",
        "CFM50": "entered: 754",
        "Comments": "entered: attic hatch weatherstripped",
        "Digits only": "differs: 0442 (the page changed it)",
        "Fixed": "refused: kept (the page kept what was there)",
        "Range": "entered: middle",
        "Result": "entered: Fail",
        "Street address": "entered: 14 Tannery Row",
        "Test date": "entered: 2026-02-11",
      }
    `)
    await bench.page.close()
  })

  test('says what a page did to the text', async () => {
    const bench = await Bench.open(browser, form, await page('masks'))
    const result = await fillIn(bench, {
      Separated: '1445',
      Clamped: '754',
      Emptied: '1',
      Restored: 'new',
      Late: '12',
      Summed: '21',
      Licence: '442',
      Permit: 'LC7-2026-0187',
      Short: '754321',
      Throwing: '5',
      Vanishing: '6',
      Counted: '12',
      Plain: '7',
      Stubborn: 'checked',
    })
    expect(result).toMatchInlineSnapshot(`
      {
        "Clamped": "differs: 500 (the page changed it)",
        "Counted": "entered: 12 (the page says: Value must be less than or equal to 10.)",
        "Emptied": "refused:  (the page emptied it)",
        "Late": "differs: 12 checked (changed by the page after it was entered)",
        "Licence": "entered: 442 (the page says: Use the form T-0000.)",
        "Permit": "entered: LC7-2026-0187 (the page says: No such permit.)",
        "Plain": "entered: 7",
        "Restored": "refused: old (the page kept what was there)",
        "Separated": "entered: 1,445 (the page words it “1,445”)",
        "Short": "refused:  (The control takes 5 characters at most: shorten the text.)",
        "Stubborn": "refused: not checked (the page kept what was there)",
        "Summed": "entered: 21",
        "Throwing": "entered: 5",
        "Vanishing": "not found:  (the page took the control away while it was filled: look there)",
      }
    `)
    expect(await bench.page.$eval('#sum', (node) => node.textContent)).toBe('42')
    await bench.page.close()
  })
})
