/** lib/form in a real Firefox, in a sandbox beside the page as its content scripts have. */
import { readFile } from 'node:fs/promises'
import { launch, type Browser, type Page } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Clues, ReceiptLine } from '../../lib/form/schema.ts'
import { findBrowser } from './find-browser.ts'
import { bundle } from './isolated.ts'

let browser: Browser
let form: string
let react: string

beforeAll(async () => {
  ;[browser, form, react] = await Promise.all([
    launch({ browser: 'firefox', executablePath: findBrowser('firefox'), headless: true }),
    bundle('../pages/controls/bench.ts', 'bench'),
    bundle('../pages/controls/controlled.tsx', 'controlled', 'development'),
  ])
})

afterAll(() => browser?.close())

interface Sandbox {
  evaluate(code: string): Promise<unknown>
}

async function open(markup: string, script = ''): Promise<{ page: Page; call: <T>(code: string) => Promise<T> }> {
  const page = await browser.newPage()
  await page.setContent(markup)
  if (script) await page.addScriptTag({ content: script })
  // The driver keeps a sandbox of its own per frame; its types do not show it.
  const sandbox = (page.mainFrame() as unknown as { isolatedRealm(): Sandbox }).isolatedRealm()
  await sandbox.evaluate(`${form}; globalThis.bench = bench; undefined`)
  const call = async <T>(code: string) =>
    JSON.parse(
      String(await sandbox.evaluate(`Promise.resolve(${code}).then((value) => JSON.stringify(value ?? null))`)),
    ) as T
  return { page, call }
}

const empty = JSON.stringify({ job: { id: 'j', name: '14 Tannery Row' }, items: {} })

test('controls are named, and a page whose framework tracks values takes what is filled', async () => {
  const names = await open(await readFile(new URL('../pages/controls/names.html', import.meta.url), 'utf8'))
  const controls = await names.call<{ is: string; got: string }[]>('bench.named()')
  expect(controls.length).toBeGreaterThan(20)
  expect(controls.map(({ got }) => got)).toEqual(controls.map(({ is }) => is))

  const { page, call } = await open('<!doctype html><body></body>', react)
  const texts: Record<string, string> = {
    'Street address': '14 Tannery Row',
    CFM50: '754',
    'Test date': '2026-02-11',
    Comments: 'attic hatch',
    Range: 'middle',
    Result: 'Fail',
    'Attic sealed': 'checked',
    'Digits only': 'T-0442',
    Fixed: 'other',
  }
  const clues = await call<Clues[]>('bench.clues()')
  const bindings = clues.map((control) => ({
    id: control.name,
    control,
    source: { from: 'text', text: texts[control.name] },
  }))
  await call(`bench.makePlan(${JSON.stringify(bindings)}, ${empty})`)
  const lines = await call<ReceiptLine[]>('bench.runFill()')
  expect(
    Object.fromEntries(lines.map(({ binding, outcome, readBack }) => [binding, `${outcome}: ${readBack}`])),
  ).toEqual({
    'Street address': 'entered: 14 Tannery Row',
    CFM50: 'entered: 754',
    'Test date': 'entered: 2026-02-11',
    Comments: 'entered: attic hatch',
    Range: 'entered: middle',
    Result: 'entered: Fail',
    'Attic sealed': 'entered: checked',
    'Digits only': 'differs: 0442',
    Fixed: 'refused: kept',
  })
  expect(await page.evaluate('state')).toEqual({
    street: '14 Tannery Row',
    flow: '754',
    date: '2026-02-11',
    comments: 'attic hatch',
    range: 'b',
    result: 'Fail',
    sealed: true,
    digits: '0442',
    fixed: 'kept',
  })
})
