import { describe, expect, test } from 'vitest'
import { alike, contradict, tidy, words } from '../../lib/form/words.ts'

describe('words', () => {
  test('marks that pages hang on a label are dropped', () => {
    expect(tidy('  CFM at\n 50 Pa: * ')).toBe('CFM at 50 Pa')
    expect(tidy('* Town (required)')).toBe('Town')
  })

  test('letters and digits stand apart, numbering in front is no word', () => {
    expect(words('C1. CFM50 (ft³/min)')).toEqual(['cfm', '50', 'ft', '3', 'min'])
    expect(words('Réduction 47.8 %')).toEqual(['reduction', '47.8', '%'])
  })

  test('equal to the letter beats equal in words beats partly equal', () => {
    expect(alike('CFM50', 'CFM50')).toBe(1)
    expect(alike('CFM50', 'cfm 50:')).toBe(0.9)
    expect(alike('CFM at 50 Pa', 'CFM50')).toBeGreaterThan(0.5)
    expect(alike('CFM at 50 Pa', 'CFM50')).toBeLessThan(0.9)
    expect(alike('Town', 'State')).toBe(0)
    expect(alike('', 'State')).toBe(0)
  })

  test.each([
    ['Before work', 'After work'],
    ['Pre-retrofit', 'Post-retrofit'],
    ['CFM at 50 Pa', 'CFM at 25 Pa'],
    ['Duct system 1', 'Duct system 2'],
    ['Total leakage', 'Leakage to outside'],
    ['Indoor temperature', 'Outdoor temperature'],
    ['Depressurization', 'Pressurization'],
    ['Conditioned floor area', 'Conditioned volume'],
  ])('%s is never %s', (one, other) => {
    expect([contradict(one, other), contradict(other, one)]).toEqual([true, true])
  })

  test.each([
    ['CFM50', 'CFM at 50 Pa'],
    ['C1. Before work', 'C4. Before work'],
    ['Leakage per 100 ft²', 'Leakage per 100 sq ft'],
    ['Before and after', 'After work'],
    ['Town', 'Town or city'],
  ])('%s may be %s', (one, other) => {
    expect([contradict(one, other), contradict(other, one)]).toEqual([false, false])
  })
})
