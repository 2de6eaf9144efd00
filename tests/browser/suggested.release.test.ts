/** Every suggestion of the test pages: what is made is right; what is not clear is not made. The table is printed. */
import type { Browser } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { material } from '../../lib/job/material.ts'
import { pageSources, type PageSource } from '../pages/places/pages.ts'
import { Bench, bundle, startBrowser } from './isolated.ts'

let browser: Browser
let form: string
let sources: PageSource[]

beforeAll(async () => {
  ;[browser, form, sources] = await Promise.all([
    startBrowser(),
    bundle('../pages/controls/bench.ts', 'bench'),
    pageSources(),
  ])
})

afterAll(() => browser?.close())

const job = material(demoJob(), [demoDevice()], { now: new Date('2026-03-01T12:00:00Z') })

/** What a person would say that a control asks for, by its name; `side` stands for before or after. */
const meant: readonly [name: RegExp, item: string][] = [
  [/^(street address|address line 1)$/i, 'job/street'],
  [/^(city|town( or city)?)$/i, 'job/town'],
  [/^permit number$/i, 'job/permit'],
  [/^application number$/i, 'job/program'],
  [/^climate zone$/i, 'job/climate-zone'],
  [/floor area/i, 'job/floor-area'],
  [/volume/i, 'job/volume'],
  [/^how areas were obtained$/i, 'job/area-source'],
  [/^testing company$/i, 'tester/company'],
  [/^(tester, printed name|full name)$/i, 'tester/name'],
  [/^licence number$/i, 'tester/licence'],
  [/^(test date|date of test)$/i, 'side/date'],
  [/^(cfm50|cfm at 50 pa)$/i, 'side/flow-50'],
  [/^(ach50|air changes per hour at 50 pa)$/i, 'side/air-changes-50'],
  [/^range$/i, 'side/range'],
  [/^result$/i, 'side/verdict'],
  [/^test procedure$/i, 'side/procedure'],
  [/^wind during the test$/i, 'side/wind'],
  [/^stage$/i, 'side/stage'],
  [/^reduction \(%\)$/i, 'before+after/reduction-percent'],
  [/^duct system 1$/i, 'duct system 1/duct-flow-25'],
]

interface Suggested {
  control: string
  section: string
  item: string
  reason: string
  clear: boolean
}

function right({ control, section, item }: Suggested): boolean {
  const wanted = meant.find(([name]) => name.test(control))?.[1]
  const side = /before/i.test(section) ? 'before' : /^ducts/i.test(section) ? 'duct system 1' : 'after'
  return wanted !== undefined && item === wanted.replace('side', side)
}

test('no suggestion of ours is wrong, and each gives its reason', async () => {
  const rows: string[] = [`${'page'.padEnd(22)}controls suggested right wrong`]
  const wrong: string[] = []
  let made = 0
  for (const { name, markup, script } of sources) {
    const bench = await Bench.open(browser, form, markup, script)
    const all = await bench.call<Suggested[]>('suggestions', job)
    const clear = all.filter((each) => each.clear)
    const bad = clear.filter((each) => !right(each))
    made += clear.length
    wrong.push(...bad.map(({ control, section, item }) => `${name}: ${section} / ${control} -> ${item}`))
    rows.push(
      `${name.padEnd(22)}${String(all.length).padStart(8)}${String(clear.length).padStart(10)}${String(clear.length - bad.length).padStart(6)}${String(bad.length).padStart(6)}`,
    )
    expect(clear.filter(({ reason }) => !/agree/.test(reason))).toEqual([])
    await bench.page.close()
  }
  console.log(rows.join('\n'))
  expect(wrong).toEqual([])
  expect(made).toBeGreaterThan(60)
})
