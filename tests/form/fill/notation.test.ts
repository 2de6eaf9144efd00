/** What a page shows in a notation of its own is what was typed; what only looks like it is not. */
import { describe, expect, test } from 'vitest'
import { inOwnNotation, type Notation } from '../../../lib/form/fill/notation.ts'

const german: Notation = { language: 'de' }
const american: Notation = { date: 'MM/dd/yyyy', language: 'en-US' }

describe('what means the same', () => {
  test.each<[string, string, Notation?]>([
    ['1445', '1,445'],
    ['1445', '1 445'],
    ['1445', '1.445', german],
    ['1445', '1.445', { language: 'de-DE' }],
    ['1445', '1445 cfm'],
    ['1445 cfm', '1,445 CFM'],
    ['15810', '15,810 ft³'],
    ['450', '$450.00'],
    ['30', '30 %'],
    ['-5', '−5 °F'],
    ['Marrowby', 'MARROWBY'],
    ['lc7-2026-0187', 'LC7-2026-0187'],
    ['T0442', 'T-0442'],
    ['5550100442', '(555) 010-0442'],
    ['555-010-0442', '(555) 010-0442'],
    ['2026-02-11', 'Feb 11, 2026'],
    ['2026-02-11', '11. February 2026'],
    ['02/11/2026', '2/11/2026', american],
    ['02/11/2026', '2026-02-11', american],
    ['02/11/2026', '11 Feb 2026', american],
    ['14:05', '2:05 PM'],
    ['00:30', '12:30 a.m.'],
    ['2026-02-11', '2026.02.11', { date: 'yyyy-MM-dd' }],
    ['2960', '2.960', { mark: '.', language: 'de' }],
    ['2,960', '2.960', { mark: ',', language: 'en' }],
    ['1.445', '1,445', { mark: '.', language: 'de' }],
    ['1445', '1445 cfm', { mark: '.', unit: 'cfm' }],
    ['1445', '1,445 CFM50', { mark: '.', unit: 'cfm' }],
    ['MB-2025-1183', 'MB2025-1183'],
  ])('%j and %j', (intended, shown, notation) => {
    expect(inOwnNotation(intended, shown, notation)).toBe(true)
  })
})

describe('what does not', () => {
  test.each<[string, string, Notation?]>([
    ['1445', '1.445'],
    ['1445', '1.445', { language: 'en-US' }],
    ['1445', '14.45', german],
    ['1445', '144.5', german],
    ['5.48', '548'],
    ['5.48', '5.5'],
    ['1.5 m', '15 m'],
    ['1/2 in', '12 in'],
    ['3-4', '34'],
    ['-5', '5'],
    ['1445', '1445 k'],
    ['12', '12 checked'],
    ['12', '12 or more'],
    ['1445', '1445 cfm 2'],
    ['1445 cfm', '1445 L/s'],
    ['1445 cfm', '1445'],
    ['0.3', '30 %'],
    ['0012', '12'],
    ['0012', '12 ft'],
    ['5550100442', '(555) 010-0443'],
    ['02/11/2026', '11/02/2026', american],
    ['02/11/2026', '2 Nov 2026', american],
    ['02/11/2026', '2026-02-11'],
    ['2026-02-11', 'Feb 12, 2026'],
    ['14:05', '2:05 AM'],
    ['Marrowby', 'Marrowby West'],
    ['', '0'],
    ['0', ''],
    ['A', 'a-'],
    // A mask that takes the year first puts the digits elsewhere; the digits are the same.
    ['2026-02-11', '20/26/0211', { date: 'yyyy-MM-dd' }],
    ['2/11/2026', '21/12/026', { date: 'M/d/yyyy' }],
    ['1/12/2026', '11/2/2026', { date: 'M/d/yyyy' }],
    ['1/12/2026', '11/2/2026'],
    ['20260211', '2026-02-11'],
    // What stands beside a date is not lost.
    ['Tested 2026-02-11 by Ines', 'Tested 2026-02-11'],
    ['MBX-2025-11-1834', 'MBX-2025-11-183'],
    ['from 2026-02-11 to 2026-03-01', 'from 2026-02-11 to 2026-04-01'],
    // A sign, and a negative in the way of accounts.
    ['-50 Pa', '50 Pa'],
    ['-5 °F', '5 °F'],
    ['500', '(500)'],
    ['3 - 4 in', '34 in'],
    // A comma or point before three digits is of the thousands or decimal, by the language and by how it was typed.
    ['1445', '1,445', { mark: '.', language: 'de' }],
    ['2,960', '2960', { mark: ',', language: 'en' }],
    ['1.445', '1,445', { mark: '.', language: 'en' }],
    // Another unit, or a multiple.
    ['1445', '1445 L/s', { mark: '.', unit: 'cfm' }],
    ['12', '12 ft or more'],
    ['754', '754 hundred cfm'],
    ['15', '15 k ft³'],
    ['€450', '$450'],
    // A number is no time, and no phone number.
    ['5.48', '05:48'],
    ['2.50', '2:50 am'],
    ['1234567', '12345.67'],
    ['1234567', '123.4567'],
  ])('%j and %j', (intended, shown, notation) => {
    expect(inOwnNotation(intended, shown, notation)).toBe(false)
  })
})
