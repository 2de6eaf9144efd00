/** Forms that ask for the same in other words from one year to the next; on living pages: `tests/browser/mutations`. */
import { describe, expect, test } from 'vitest'
import { findAll, fit } from '../../../lib/form/map/find.ts'
import type { Clues } from '../../../lib/form/schema.ts'
import { fakeClues } from '../fake.ts'
import { controlOf, redesignsOf } from './redesigned.ts'

test('50 redesigns of every form: none mistaken, 95 of 100 found or asked about', () => {
  const all = redesignsOf(Array.from({ length: 50 }, (_, at) => at + 1))
  expect(all.wrong).toEqual([])
  expect((all.found + all.asked) / all.there, `${all.lost.join('\n')}`).toBeGreaterThanOrEqual(0.95)
  expect(all.found / all.there).toBeGreaterThan(0.75)
  expect(all.there).toBeGreaterThan(3000)
})

/** What becomes of one binding on a page with these controls. */
function found(mapped: Clues, ...now: Clues[]): string {
  const binding = { id: 'one', control: mapped, source: { from: 'text' as const, text: '' } }
  const answer = findAll([binding], now.map(controlOf)).get('one')
  if (!answer) return 'no answer'
  if ('found' in answer) return `found ${answer.found.name}`
  if ('ambiguous' in answer) return `which of ${answer.ambiguous.length}`
  return answer.nearest.length > 0 ? `is it ${answer.nearest.map(({ name }) => name).join(', ')}?` : 'nothing'
}

const plainly = (name: string): Clues => fakeClues({ name, section: '', attributes: {} })
const inWork = (name: string): Clues => ({ ...plainly(name), section: 'Work' })
const boxes = (name: string): Clues => ({ ...plainly(name), kind: 'date-boxes', attributes: { name: 'd-Day' } })

describe('a control that asks for another item', () => {
  test('is not taken for its boxes’ name, which only says the part of a date', () => {
    expect(found(boxes('Date the home was tested'), boxes('Permit date'))).toBe('is it Permit date?')
  })

  test('nor where the form map binds each box of a date by itself', () => {
    const day: Clues = fakeClues({ name: 'Day', section: 'Permit', attributes: { name: 'd-Day' } })
    expect(found(day, day)).toBe('found Day')
    expect(found(day, { ...day, position: 3 })).toBe('is it Day?')
    const own: Clues = { ...day, attributes: { name: 'permit-day' } }
    expect(found(own, { ...own, position: 3 })).toBe('found Day')
  })

  test.each([
    ['Tested on', 'Permit issued on'],
    ['Date (test)', 'Date (permit)'],
    ['Volume (cu ft)', 'Volume (m³)'],
    ['Phone', 'Phone (owner)'],
    ['Name of the person who tested the ducts of the house', 'Name of the person who owned the ducts of the house'],
  ])('“%s” is asked about where “%s” stands under its heading', (mapped, now) => {
    expect(found(inWork(mapped), inWork(now))).toBe(`is it ${now}?`)
  })

  test('whatever the page itself calls it', () => {
    const attributes = { name: 'date_1' }
    expect(found({ ...inWork('Tested on'), attributes }, { ...inWork('Permit issued on'), attributes })).toBe(
      'is it Permit issued on?',
    )
  })

  test('nor under a heading of someone else', () => {
    const phone = plainly('Phone')
    const now = { ...phone, section: 'Owner contact information' }
    expect(found({ ...phone, section: 'Tester contact information' }, now)).toBe('is it Phone?')
  })
})

test.each([
  ['Permit number', 'Permit ref.'],
  ['House volume', 'Volume of the home'],
  ['Tester', 'Technician'],
])('“%s” is asked about where it is called “%s”, before what else stands there', (mapped, now) => {
  expect(found(plainly(mapped), plainly('Comments'), plainly(now))).toMatch(new RegExp(`^is it ${now}`))
})

test.each([
  ['CFM50', 'CFM at 50 Pa'],
  ['ACH50', 'Air changes/hour at 50 Pa'],
  ['Permit number', 'Permit #'],
  ['Conditioned volume (cu ft)', 'Conditioned volume, ft³'],
])('“%s” is found in another notation: “%s”', (mapped, now) => {
  expect(found(plainly(mapped), plainly(now))).toBe(`found ${now}`)
  expect(found(plainly(now), plainly(mapped))).toBe(`found ${mapped}`)
})

test('two equally near are both offered, in the order of the page', () => {
  expect(found(plainly('Test date'), plainly('Date tested (first)'), plainly('Date tested (second)'))).toMatch(
    /^is it .*first.*second/,
  )
  expect(fit(plainly('Test date'), plainly('Date of test'))).toBeGreaterThan(0.6)
})
