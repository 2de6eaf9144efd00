/** Patterns are those of Unicode Technical Standard 35, part 4: y, M and d, doubled for leading zeros. */
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { isPattern, patternIn, readDate, writeDate } from '../../lib/form/dates.ts'

test.each([
  ['MM/dd/yyyy', '02/01/2026'],
  ['M/d/yyyy', '2/1/2026'],
  ['dd.MM.yyyy', '01.02.2026'],
  ['yyyy-MM-dd', '2026-02-01'],
  ['d/M/yy', '1/2/26'],
])('%s writes the first of February as %s', (pattern, text) => {
  expect(writeDate('2026-02-01', pattern)).toBe(text)
  expect(readDate(text, pattern)).toBe('2026-02-01')
})

test('what is no ISO date is not written, what does not fit is not read', () => {
  expect(writeDate('soon', 'MM/dd/yyyy')).toBeUndefined()
  expect(readDate('2026-02-01', 'MM/dd/yyyy')).toBeUndefined()
  expect(readDate('', 'MM/dd/yyyy')).toBeUndefined()
})

test('every date reads back, in every order', () => {
  const day = fc.date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true })
  const pattern = fc.constantFrom('MM/dd/yyyy', 'd.M.yyyy', 'dd-MM-yy', 'yyyy/MM/dd')
  fc.assert(
    fc.property(day, pattern, (date, order) => {
      const iso = date.toISOString().slice(0, 10)
      expect(readDate(writeDate(iso, order) ?? '', order)).toBe(iso)
    }),
  )
})

test.each([
  ['MM/DD/YYYY', 'MM/dd/yyyy'],
  ['Date (mm/dd/yyyy)', 'MM/dd/yyyy'],
  ['dd.mm.yyyy', 'dd.MM.yyyy'],
  ['YYYY-MM-DD', 'yyyy-MM-dd'],
  ['d/m/yy', 'd/M/yy'],
])('“%s” shows the pattern %s', (text, pattern) => {
  expect(patternIn(text)).toBe(pattern)
})

test('other text shows none', () => {
  expect(patternIn('Date of test')).toBeUndefined()
  expect(patternIn('yyyy/yyyy/dd')).toBeUndefined()
})

test.each(['MMM d, yyyy', 'MMMM d, yyyy', 'yyyyy-MM-dd', 'MM/dd/MM', 'dd de MM', 'EEE dd', '', '/'])(
  '“%s” is no pattern: nothing is written by it',
  (pattern) => {
    expect(isPattern(pattern)).toBe(false)
    expect(writeDate('2026-02-11', pattern)).toBeUndefined()
  },
)

test.each(['MM/dd/yyyy', 'yyyyMMdd', 'MM/yyyy', 'yyyy', 'd', 'dd.MM.yy', 'yyyy年M月d日'])(
  '%s is a pattern',
  (pattern) => {
    expect(isPattern(pattern)).toBe(true)
  },
)
