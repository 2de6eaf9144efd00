import { describe, expect, test } from 'vitest'
import { looksGenerated } from '../../../lib/form/page/clues.ts'
import { fit } from '../../../lib/form/map/find.ts'
import { fakeClues } from '../fake.ts'

describe('fit', () => {
  test('is 1 for the control as it was, wherever it stands on the page', () => {
    expect(fit(fakeClues(), fakeClues({ position: 7 }))).toBe(1)
  })

  test('survives one clue that changed', () => {
    const mapped = fakeClues()
    expect(fit(mapped, fakeClues({ attributes: { name: 'other' } }))).toBeGreaterThan(0.6)
    expect(fit(mapped, fakeClues({ name: 'CFM50' }))).toBeGreaterThan(0.6)
    expect(fit(mapped, fakeClues({ kind: 'number' }))).toBeGreaterThan(0.6)
    expect(fit(mapped, fakeClues({ section: 'Second visit' }))).toBeGreaterThan(0.6)
  })

  test('is too little when the label has a word more, though the page gives both the same name', () => {
    expect(fit(fakeClues(), fakeClues({ name: 'Requested CFM at 50 Pa' }))).toBeLessThan(0.6)
  })

  test('is too little when only the label is left', () => {
    expect(fit(fakeClues(), fakeClues({ section: 'Second visit', attributes: {} }))).toBeLessThan(0.6)
    expect(fit(fakeClues({ attributes: {} }), fakeClues({ section: '', attributes: {} }))).toBeLessThan(0.6)
  })

  test('is 0 under the opposite heading, even when everything else agrees', () => {
    expect(fit(fakeClues(), fakeClues({ section: 'Before work' }))).toBe(0)
    expect(fit(fakeClues(), fakeClues({ name: 'CFM at 25 Pa' }))).toBe(0)
  })

  test('is 0 for a kind that cannot take the same text', () => {
    expect(fit(fakeClues(), fakeClues({ kind: 'checkbox' }))).toBe(0)
    expect(fit(fakeClues({ kind: 'select' }), fakeClues({ kind: 'text' }))).toBe(0)
  })
})

describe('generated attributes', () => {
  test.each([
    ':r1f:',
    '_r_3_',
    '«r1»',
    'input-17',
    'ember1234',
    'ctl1010_town',
    '3f2504e0-4f89-41d3-9a0c-0305e82c3301',
    'field_x7Gk2',
    '9f86d081884c',
    '42',
  ])('%s tells nothing', (value) => {
    expect(looksGenerated(value)).toBe(true)
  })

  test.each(['mui-3', 'react-select-2-input', 'mat-input-0', 'radix-:r1:', 'mantine-r3-target', 'p_12_field'])(
    '%s tells nothing of a street address, whoever gives such ids',
    (value) => {
      expect(looksGenerated(value, 'Street address Building')).toBe(true)
    },
  )

  test.each(['street-2', 'address_3_line', 'building-1', 'bldg', 'strAddress'])('%s says what it is', (value) => {
    expect(looksGenerated(value, 'Street address Building')).toBe(false)
  })

  test.each([
    'cfm50',
    'cfm50_after',
    'ach50',
    'street',
    'address-line1',
    'ctl00$Main$txtCity',
    'n50',
    'C1_flow',
    'testDate',
  ])('%s is kept', (value) => {
    expect(looksGenerated(value)).toBe(false)
  })
})
