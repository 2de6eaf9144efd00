/** Suggestions for the labels of real forms, in a real Chromium. The wordings come from public submittal forms. */
import type { Browser } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { material } from '../../lib/job/material.ts'
import { Bench, bundle, startBrowser } from './isolated.ts'

let browser: Browser
let form: string

beforeAll(async () => {
  ;[browser, form] = await Promise.all([startBrowser(), bundle('../pages/controls/bench.ts', 'bench')])
})

afterAll(() => browser?.close())

const job = material(demoJob(), [demoDevice()], { now: new Date('2026-03-01T12:00:00Z') })

interface Row {
  section?: string
  label: string
  control?: string
  wants: string
}

const text = '<input>'
const number = '<input type="number" step="any">'
const date = '<input type="date">'
const choice = (...options: string[]) =>
  `<select>${['Select', ...options].map((each) => `<option>${each}`).join('')}</select>`

const rows: Row[] = [
  { label: 'Street address', wants: 'job/street' },
  { label: 'Site address', wants: 'job/address' },
  { label: 'City', wants: 'job/town' },
  { label: 'Building permit #', wants: 'job/permit' },
  { label: 'Permit number', wants: 'job/permit' },
  { label: 'Application number', wants: 'job/program' },
  { label: 'General contractor', wants: 'job/builder' },
  { label: 'Conditioned floor area (sq ft)', control: number, wants: 'job/floor-area' },
  { label: 'CFA (ft²)', wants: 'job/floor-area' },
  { label: 'Conditioned volume (cu ft)', control: number, wants: 'job/volume' },
  { label: 'Building volume, ft3', wants: 'job/volume' },
  { label: 'Building envelope surface area (ft2)', wants: 'job/enclosure-area' },
  { label: 'Number of bedrooms', control: number, wants: 'job/bedrooms' },
  { label: 'Climate zone', wants: 'job/climate-zone' },
  { label: 'Testing company', wants: 'tester/company' },
  { label: 'Tester, printed name', wants: 'tester/name' },
  { label: 'Test performed by', wants: 'tester/name' },
  { label: 'Technician name', wants: 'tester/name' },
  { label: 'Licence number', wants: 'tester/licence' },
  { label: 'License expiration date', control: date, wants: 'tester/licence-expiry' },
  { label: 'Certification ID', wants: 'tester/licence' },
  { label: 'Phone', wants: 'tester/phone' },
  { label: 'E-mail address', wants: 'tester/email' },
  { section: 'C1. Before work', label: 'Date of test', control: date, wants: 'before/date' },
  { section: 'C2. After work', label: 'Date of test', control: date, wants: 'after/date' },
  { section: 'C1. Before work', label: 'CFM at 50 Pa', control: number, wants: 'before/flow-50' },
  { section: 'C2. After work', label: 'CFM at 50 Pa', control: number, wants: 'after/flow-50' },
  { section: 'Post-retrofit', label: 'CFM50', wants: 'after/flow-50' },
  { section: 'Pre-retrofit', label: 'Air leakage at 50 pascals (cfm)', wants: 'before/flow-50' },
  { section: 'C2. After work', label: 'Air changes per hour at 50 Pa', control: number, wants: 'after/air-changes-50' },
  { section: 'Final test', label: 'ACH50', wants: 'after/air-changes-50' },
  { section: 'Final test', label: 'n50 (1/h)', wants: 'after/air-changes-50' },
  { section: 'Existing building', label: 'ACH @ 50 Pa', wants: 'before/air-changes-50' },
  { section: 'After', label: 'Effective leakage area (ELA), sq in', wants: 'after/effective-leakage-area' },
  { section: 'After', label: 'EqLA', wants: 'after/equivalent-leakage-area' },
  { section: 'After', label: 'Specific leakage area (SLA)', wants: 'after/specific-leakage-area' },
  { section: 'After', label: 'Flow exponent (n)', wants: 'after/leakage-exponent' },
  { section: 'After', label: 'Flow coefficient (C)', wants: 'after/leakage-coefficient' },
  { section: 'After', label: 'CFM50 per sq ft of building enclosure', wants: 'after/flow-50-per-enclosure-area' },
  { section: 'After', label: 'cfm75/ft²', wants: 'after/flow-75-per-enclosure-area' },
  { section: 'After', label: 'Result', control: choice('Pass', 'Fail'), wants: 'after/verdict' },
  { section: 'After', label: 'Range', control: choice('wide', 'middle', 'narrow'), wants: 'after/range' },
  { section: 'After', label: 'Weather', control: choice('Calm', 'Mild', 'Windy'), wants: 'after/wind' },
  { section: 'After', label: 'Outdoor temperature (°F)', control: number, wants: 'after/outdoor' },
  { section: 'Before', label: 'Indoor temp, F', wants: 'before/indoor' },
  { label: 'Reduction (%)', wants: 'before+after/reduction-percent' },
  { label: 'CFM reduction', wants: 'before+after/reduction' },
  { section: 'Duct system 1', label: 'Total leakage, CFM25', control: number, wants: 'duct system 1/duct-flow-25' },
  { section: 'Ducts', label: 'Duct leakage at 25 Pa', wants: 'duct system 1/duct-flow-25' },
  { section: 'Ducts', label: 'CFM25 per 100 sq ft', wants: 'duct system 1/duct-flow-25-per-floor-area' },
  { section: 'Ducts', label: 'Leakage as % of air handler flow', wants: 'duct system 1/duct-share-of-air-handler' },
]

/** Labels that ask for nothing a job holds: whatever is proposed for them must not be called clear. */
const foreign = [
  'Owner name',
  'Invoice amount',
  'Mailing address',
  'Date of birth',
  'Building age',
  'Fax',
  'Insulation R-value',
  'Account number',
  'Utility company account',
]

function markup({ section, label, control }: Row, at: number): string {
  return `<section>${section ? `<h3>${section}</h3>` : ''}<label for="c${at}">${label}</label>${(control ?? text).replace(/^<(\w+)/, `<$1 id="c${at}"`)}</section>`
}

test('the label, heading and unit of a form lead to the figure or field they ask for', async () => {
  const bench = await Bench.open(browser, form, `<!doctype html>${rows.map(markup).join('')}`)
  const best = await bench.call<{ control: string; item: string; reason: string; clear: boolean }[]>('suggestions', job)
  expect(best.map(({ item }, at) => `${rows[at]?.section ?? ''} / ${rows[at]?.label}: ${item}`)).toEqual(
    rows.map(({ section, label, wants }) => `${section ?? ''} / ${label}: ${wants}`),
  )
  const unclear = best.flatMap(({ clear }, at) => (clear ? [] : [rows[at]?.label]))
  expect(unclear).toEqual([])
  await bench.page.close()
})

test('a label that asks for something else gets no clear suggestion', async () => {
  const bench = await Bench.open(
    browser,
    form,
    `<!doctype html>${foreign.map((label, at) => markup({ label, wants: '' }, at)).join('')}`,
  )
  const best = await bench.call<{ control: string; item: string; clear: boolean }[]>('suggestions', job)
  expect(best.filter(({ clear }) => clear)).toEqual([])
  await bench.page.close()
})

test('without a heading that says which test, none is clear', async () => {
  const bench = await Bench.open(browser, form, `<!doctype html><label>CFM50 <input></label>`)
  const [best] = await bench.call<{ item: string; clear: boolean }[]>('suggestions', job)
  expect(best).toMatchObject({ clear: false })
  await bench.page.close()
})
