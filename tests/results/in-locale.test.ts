import { expect, test } from 'vitest'
import { inLocale, marksOf, wordsInLocale } from '../../lib/results/in-locale.ts'

// Marks: Unicode CLDR, by the Intl of the platform.
test('marks are those of the locale', () => {
  expect(marksOf('es')).toEqual({ decimal: ',', group: '.' })
  expect(marksOf('es-MX')).toEqual({ decimal: '.', group: ',' })
  expect(marksOf('en')).toEqual({ decimal: '.', group: ',' })
  expect(marksOf('no locale at all')).toEqual({ decimal: '.', group: ',' })
})

test('numbers of a text are written in the locale; clauses, standards and what was typed are not', () => {
  const spanish = marksOf('es')
  expect(inLocale('2.86 ± 0.17, 1,020.5 cfm', spanish)).toBe('2,86 ± 0,17, 1.020,5 cfm')
  expect(inLocale('IECC 2021, R402.4.1.3; ASHRAE 62.2', spanish)).toBe('IECC 2021, R402.4.1.3; ASHRAE 62.2')
  expect(inLocale('“1.234” is read', spanish)).toBe('“1.234” is read')
  expect(inLocale('«Fan 3.1» mide 3.1', spanish)).toBe('«Fan 3.1» mide 3,1')
  expect(inLocale('„Gebläse 3.1“ misst 1,020.5', marksOf('de'))).toBe('„Gebläse 3.1“ misst 1.020,5')
  expect(inLocale('« Anneau 2.5 » : 1,020.5', marksOf('fr'))).toBe('« Anneau 2.5 » : 1\u202f020,5')
})

test('names, units and sources are left alone, and so is all in a locale with a point', () => {
  const line = { name: 'C 1.5', value: '1.5', source: 'JCGM 100, 5.1', list: ['0.5'] }
  expect(wordsInLocale(line, 'es')).toEqual({ name: 'C 1.5', value: '1,5', source: 'JCGM 100, 5.1', list: ['0,5'] })
  expect(wordsInLocale(line, 'es-MX')).toBe(line)
})
