import { describe, expect, test } from 'vitest'
import { apart, chooseAmong } from '../../lib/form/choose.ts'
import { textOf } from '../../lib/form/fill/text.ts'
import type { Material } from '../../lib/form/material.ts'

describe('the option that stands for a text', () => {
  const zones = ['Choose one', 'Zone 3', 'Zone 4', 'Zone 5']
  test.each([
    ['5', zones, 'Zone 5'],
    ['5A', zones, 'Zone 5'],
    ['zone 4', zones, 'Zone 4'],
    ['5A', ['4A', '5A', '5B'], '5A'],
    ['5', ['4 - Mixed', '5 - Cool'], '5 - Cool'],
    ['5', ['4A', '5A', '5B'], undefined],
    ['5C', ['5A', '5B'], undefined],
    ['6', zones, undefined],
    ['', zones, undefined],
    ['York', ['York County', 'Kent County'], 'York County'],
    ['York', ['York', 'Yorkville'], 'York'],
    ['New', ['New Town', 'Old Town'], 'New Town'],
    ['New', ['New Harbour', 'Old Town'], undefined],
  ])('%s of %o is %s', (text, options, chosen) => {
    expect(chooseAmong(text, options)).toBe(chosen)
  })

  test('is told by what not all options say', () => {
    expect(apart(['Zone 3', 'Zone 4A'])).toEqual(['3', '4A'])
    expect(apart(['Zone 3'])).toEqual(['Zone 3'])
    expect(apart([])).toEqual([])
  })
})

const of = (text: string): Material => ({
  job: { id: 'j', name: '' },
  items: { 'job/climate-zone': { kind: 'text', label: 'climate zone', group: 'building', text } },
})

test('an answer given once holds for every text it names, in whatever case', () => {
  const write = { choices: { '5A': 'Cool and humid', '3': 'Warm' } }
  const target = { kind: 'select' as const, options: ['Warm', 'Cool and humid'] }
  const entered = (text: string) => textOf({ from: 'item', item: 'job/climate-zone', write }, of(text), target)
  expect(entered('5A')).toEqual({ text: 'Cool and humid' })
  expect(entered('5a')).toEqual({ text: 'Cool and humid' })
  expect(entered('3')).toEqual({ text: 'Warm' })
  expect(entered('7')).toHaveProperty('refused')
})
