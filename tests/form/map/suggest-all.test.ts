import { describe, expect, test } from 'vitest'
import type { Item, Material } from '../../../lib/form/material.ts'
import { propose } from '../../../lib/form/map/propose.ts'
import type { Clues } from '../../../lib/form/schema.ts'
import { suggestAll } from '../../../lib/form/map/suggest-all.ts'
import { fakeClues } from '../fake.ts'

const flow = (group: string, value: number): [string, Item] => [
  `${group}/duct-flow-25`,
  { kind: 'quantity', label: 'CFM25', group, value, unit: 'cfm', decimals: 0 },
]

const cfm50 = (group: string, value: number): [string, Item] => [
  `${group}/flow-50`,
  { kind: 'quantity', label: 'CFM50', group, value, unit: 'cfm', decimals: 0 },
]

function house(systems: number): Material {
  const own = Array.from({ length: systems }, (_, at) => flow(`duct system ${at + 1}`, 70 + at))
  const later = Array.from({ length: Math.max(0, systems - 2) }, (_, at) =>
    flow(`duct systems from ${at + 2}`, 200 - at),
  )
  return { job: { id: 'j', name: '14 Tannery Row' }, items: Object.fromEntries([...own, ...later]) }
}

const control = (name: string, section: string): Clues => ({
  ...fakeClues({ name, section }),
  kind: 'text',
  attributes: {},
})

/** The clear proposal of each control, as a person would be shown it. */
const clear = (controls: Clues[], material: Material) =>
  suggestAll(controls, material).map((each) => propose(each).find((one) => one.clear)?.item ?? '')

describe('rows that look alike', () => {
  test('take the systems one after another, and no more than there are', () => {
    const rows = Array.from({ length: 4 }, () => control('Duct leakage, CFM25', 'Ducts'))
    expect(clear(rows, house(3))).toEqual([
      'duct system 1/duct-flow-25',
      'duct system 2/duct-flow-25',
      'duct system 3/duct-flow-25',
      '',
    ])
  })

  test('may be counted only, where the column says what is asked for', () => {
    const rows = ['1', '2', '3'].map((name) => control(name, 'Duct leakage (CFM25)'))
    expect(clear(rows, house(2))).toEqual(['duct system 1/duct-flow-25', 'duct system 2/duct-flow-25', ''])
  })

  test('that name their system are taken by their name, in whatever order they stand', () => {
    const rows = [2, 1].map((number) => control(`Duct system ${number}`, 'CFM25, total'))
    expect(clear(rows, house(2))).toEqual(['duct system 2/duct-flow-25', 'duct system 1/duct-flow-25'])
  })

  test('a row for the rest takes the sum of the systems without a row', () => {
    const rows = [
      control('Duct system 1', 'CFM25, total'),
      control('Duct system 2', 'CFM25, total'),
      control('Sum of the rest', 'CFM25, total'),
    ]
    expect(clear(rows, house(5))).toEqual([
      'duct system 1/duct-flow-25',
      'duct system 2/duct-flow-25',
      'duct systems from 3/duct-flow-25',
    ])
    expect(clear(rows, house(2)).at(-1)).toBe('')
  })

  test('two places for one figure of a test that is not counted stay without a clear proposal', () => {
    const items = Object.fromEntries([flow('before', 1), flow('after', 2)])
    const rows = [control('CFM25', ''), control('CFM25', '')]
    expect(clear(rows, { job: { id: 'j', name: '' }, items })).toEqual(['', ''])
  })
})

describe('a test that the job does not have yet', () => {
  // Common practice, no source: forms of rebates ask for the house before and after work, side by side.
  const items = Object.fromEntries([
    cfm50('before', 989),
    cfm50('duct system 1', 92),
    flow('duct system 1', 61),
    ['duct system 1/date', { kind: 'date', label: 'date of test', group: 'duct system 1', iso: '2026-02-11' }],
  ])
  const job = { job: { id: 'j', name: '14 Tannery Row' }, items }

  test('leaves its controls without a clear proposal: no figure of the ducts takes its place', () => {
    const form = [
      control('CFM at 50 Pa', 'C1. Before work'),
      control('CFM at 50 Pa', 'C2. After work'),
      control('Date of test', 'C2. After work'),
    ]
    expect(clear(form, job)).toEqual(['before/flow-50', '', ''])
  })

  test('does not keep the ducts from where ducts are spoken of', () => {
    expect(clear([control('Duct leakage, CFM25', 'After work')], job)).toEqual(['duct system 1/duct-flow-25'])
  })
})

test('a result against the limit is the verdict, not the limit', () => {
  const options = ['pass', 'fail'].map((value) => ({ value, label: value }))
  const items: Material['items'] = {
    'after/verdict': { kind: 'choice', label: 'verdict', group: 'after', value: 'pass', options },
    'after/limit': { kind: 'quantity', label: 'limit of ACH50', group: 'after', value: 3, unit: '1/h', decimals: 1 },
  }
  const asked: Clues = {
    ...control('Result against the limit', 'Test after the work'),
    kind: 'radio',
    options: ['pass', 'fail'],
  }
  expect(clear([asked], { job: { id: 'j', name: '' }, items })).toEqual(['after/verdict'])
})
