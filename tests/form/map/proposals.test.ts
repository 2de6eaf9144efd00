/** What is proposed on the first visit of a form: most of what a job holds, and nothing wrong. */
import { describe, expect, test } from 'vitest'
import { demoDevice, demoJob } from '../../../lib/job/demo.ts'
import { withEmpty } from '../../../lib/job/material-empty.ts'
import { material } from '../../../lib/job/material.ts'
import type { Material } from '../../../lib/form/material.ts'
import { propose, testsInDoubt } from '../../../lib/form/map/propose.ts'
import { suggestAll } from '../../../lib/form/map/suggest-all.ts'
import type { Clues } from '../../../lib/form/schema.ts'
import { fakeClues } from '../fake.ts'
import { askedForms, cluesOfForm, otherForms, type AskedForm } from './asked-forms.ts'

const now = { now: new Date('2026-03-01T12:00:00Z') }
/** As it is while a page is mapped: what the job could hold too. */
const whole = withEmpty(material(demoJob(), [demoDevice()], now), demoJob(), [demoDevice()])
const alone = { ...demoJob(), tests: demoJob().tests.filter(({ role }) => role === 'after') }
const oneTest = withEmpty(material(alone, [demoDevice()], now), alone, [demoDevice()])

interface Proposals {
  /** Controls that ask for something that the job may hold. */
  asked: number
  right: number
  wrong: string[]
  missed: string[]
}

/** `about`: the test that the person says the page is about, where it does not say so itself. */
function proposalsFor(forms: readonly AskedForm[], of: Material, about: string): Proposals {
  const found: Proposals = { asked: 0, right: 0, wrong: [], missed: [] }
  for (const form of forms) {
    const fields = cluesOfForm(form)
    const suggested = suggestAll(
      fields.map(({ clues }) => clues),
      of,
    )
    for (const [at, { clues, field }] of fields.entries()) {
      const clear = propose(suggested[at] ?? [], undefined, about).find((one) => one.clear)?.item ?? ''
      const wants = field.item.replace(/^test\//, 'after/')
      if (!(wants in of.items) && !clear) continue
      if (wants) found.asked++
      const said = `${form.name}: ${clues.section} / ${clues.name}: ${clear}`
      if (clear && clear === wants) found.right++
      else if (clear) found.wrong.push(said)
      else if (wants) found.missed.push(said)
    }
  }
  return found
}

describe.each([
  ['forms that the vocabulary was written with', askedForms, 65],
  ['forms that it was not', otherForms, 40],
] as const)('%s', (_, forms, least) => {
  test('once the person has said which test: 70 of 100 proposed and more, none wrong', () => {
    const { asked, right, wrong, missed } = proposalsFor(forms, whole, 'after')
    expect(wrong).toEqual([])
    expect(right, `${missed.join('\n')}`).toBeGreaterThanOrEqual(Math.max(least, 0.7 * asked))
  })

  test('without an answer half of them, none wrong', () => {
    const { asked, right, wrong } = proposalsFor(forms, whole, '')
    expect(wrong).toEqual([])
    expect(right).toBeGreaterThanOrEqual(0.5 * asked)
  })
})

test('a job with one test needs no answer', () => {
  const single = askedForms.filter(({ name }) => !/before|duct/.test(name))
  const { asked, right, wrong } = proposalsFor(single, oneTest, '')
  expect(wrong).toEqual([])
  expect(right).toBeGreaterThanOrEqual(0.9 * asked)
})

const clearOf = (clues: Partial<Clues>, about = '') => {
  const [suggested] = suggestAll([fakeClues({ section: '', attributes: {}, ...clues })], whole)
  return propose(suggested ?? [], undefined, about).find((one) => one.clear)?.item
}

test.each([
  ['Address of tested home', 'job/address'],
  ['Where was the test done?', 'job/address'],
  ['Person who ran the test', 'tester/name'],
  ['Zone of the site', 'job/climate-zone'],
  ['Energy code zone', 'job/climate-zone'],
])('“%s” asks for %s', (name, item) => {
  expect(clearOf({ name })).toBe(item)
})

test.each([
  [{ name: 'Phone', section: 'Owner' }],
  [{ name: 'Name', section: 'Customer' }],
  [{ name: 'Customer e-mail' }],
  [{ name: 'Company', section: 'HVAC contractor' }],
  [{ name: 'Licence number', section: 'Builder' }],
  [{ name: 'Mailing address' }],
  [{ name: 'Permit date', kind: 'date' as const }],
  [{ name: 'Date installed', kind: 'date' as const }],
  [{ name: 'House zone pressure', kind: 'number' as const }],
  [{ name: 'Flood zone' }],
  [{ name: 'Target CFM50', section: 'After work' }],
  [{ name: 'Air handler model' }],
  [{ name: 'Attic floor area', kind: 'number' as const }],
  [{ name: 'Mechanical contractor' }],
  [{ name: 'Smoke detectors present', kind: 'radio' as const, options: ['Yes', 'No'] }],
  [{ name: 'Inspection', kind: 'select' as const, options: ['Rough-in', 'Final'] }],
])('%o asks for nothing that a job holds', (clues) => {
  expect(clearOf(clues, 'after')).toBeUndefined()
})

test('the answers of a list say what it asks for', () => {
  const options = ['Depressurization', 'Pressurization']
  expect(clearOf({ name: 'How it was done', section: 'After work', kind: 'radio', options })).toBe('after/direction')
  const winds = ['Calm', 'Light', 'Windy']
  expect(clearOf({ name: 'Conditions', section: 'After work', kind: 'select', options: winds })).toBe('after/wind')
})

describe('a page that does not say of which test it is', () => {
  const page = ['CFM50', 'ACH50', 'Outdoor temperature'].map((name) =>
    fakeClues({ name, section: '', attributes: {}, kind: 'number' }),
  )

  test('leaves several in doubt, the one that fits most controls first', () => {
    const suggested = suggestAll(page, whole)
    expect(testsInDoubt(suggested).slice(0, 2).toSorted()).toEqual(['after', 'before'])
    expect(suggested.map((each) => propose(each).some(({ clear }) => clear))).toEqual([false, false, false])
  })

  test('is answered once for all its controls', () => {
    const suggested = suggestAll(page, whole)
    const clear = suggested.map((each) => propose(each, undefined, 'before').find((one) => one.clear)?.item)
    expect(clear).toEqual(['before/flow-50', 'before/air-changes-50', 'before/outdoor'])
  })

  test('keeps to what its headings say, whatever the answer', () => {
    expect(clearOf({ name: 'CFM50', section: 'After work' }, 'before')).toBe('after/flow-50')
  })

  test('leaves none in doubt when it says so, or the job has one test', () => {
    const said = page.map((clues) => ({ ...clues, section: 'After work' }))
    expect(testsInDoubt(suggestAll(said, whole))).toEqual([])
    expect(testsInDoubt(suggestAll(page, oneTest))).toEqual([])
  })
})
