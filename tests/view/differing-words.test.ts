/** What differs, field by field: whatever is not the same has a line of its own. */
import { describe, expect, test } from 'vitest'
import type { Differing } from '../../lib/book/differing.ts'
import { bindingSchema, cluesSchema, formMapSchema } from '../../lib/form/schema.ts'
import { deviceSchema, keptLimitSchema } from '../../lib/job/schema.ts'
import { limitTermsSchema } from '../../lib/limits/schema.ts'
import { differingFields } from '../../lib/view/book/differing-words.ts'
import { fakeBinding, fakeDevice, fakeLimit, fakeMap } from '../book/fake.ts'

const limit = fakeLimit()
const fields = (one: Differing) =>
  differingFields(one).map(({ field, yours, theirs }) => `${field}: ${yours} | ${theirs}`)
const device = (theirs: object) =>
  fields({ kind: 'device', yours: fakeDevice(), theirs: { ...fakeDevice(), ...theirs } })
const limits = (theirs: object) => fields({ kind: 'limit', yours: limit, theirs: { ...limit, ...theirs } })
const [range] = fakeDevice().ranges

describe('a device', () => {
  test('is compared field by field, in words', () => {
    expect(device({ serial: '', calibrated: '2026-09-01', flowUnit: 'm3/h', decimal: 'comma' })).toEqual([
      'Serial number: 0417 | none',
      'Calibrated on: Sep 1, 2025 | Sep 1, 2026',
      'Flow unit of the certificate: cfm | m³/h',
      'Decimal mark: point | comma',
    ])
  })

  test('is compared range by range, by their names', () => {
    expect(device({ ranges: [{ ...range, coefficient: '181', maxPressure: '' }] })).toEqual([
      'Range wide: coefficient: 180 | 181',
      'Range wide: to, Pa: 300 | none',
    ])
    expect(device({ ranges: [{ ...range, name: 'narrow' }] })).toEqual([
      'Range wide: coefficient 180; exponent 0.5; from, Pa 25; to, Pa 300 | none',
      'Range narrow: none | coefficient 180; exponent 0.5; from, Pa 25; to, Pa 300',
    ])
    const two = fakeDevice({ ranges: [range!, { ...range!, name: 'narrow' }] })
    expect(fields({ kind: 'device', yours: two, theirs: { ...two, ranges: two.ranges.toReversed() } })).toEqual([
      'Order of the ranges: wide, narrow | narrow, wide',
    ])
  })
})

test('a limit is compared field by field, with what it is written for', () => {
  expect(
    limits({
      value: '5',
      set: 'Larch County 2026',
      terms: { comparison: '<', climateZones: [3, 4], stages: ['final'] },
    }),
  ).toEqual([
    'Set: edition or local code: none | Larch County 2026',
    'Limit: 3 | 5',
    'Has to be: at most | less than',
    'Climate zones: any | zones 3 and 4',
    'Stages of the work: any | final',
  ])
})

describe('a form map', () => {
  const yours = fakeMap({ bindings: [fakeBinding('a', 'Volume'), fakeBinding('b', 'Flow')] })
  const map = (theirs: object) => fields({ kind: 'map', yours, theirs: { ...yours, ...theirs } })

  test('is compared control by control', () => {
    const [a, b] = yours.bindings as [(typeof yours.bindings)[0], (typeof yours.bindings)[0]]
    expect(map({ bindings: [a] })).toEqual([expect.stringMatching(/^Control Flow, Part C: .+ \| none$/)])
    expect(map({ bindings: [{ ...a, source: { from: 'text', text: 'none' } }, b] })).toEqual([
      expect.stringMatching(/^Control Volume, Part C: what is typed: .+ \| “none”$/),
    ])
    expect(map({ bindings: [b, a] })).toEqual(['Order of the controls: Volume, Flow | Flow, Volume'])
    expect(map({ bindings: [{ ...a, step: 2 }, b] })).toEqual(['Control Volume, Part C: step of the form: none | 2'])
    expect(map({ address: { origin: 'https://other.example', path: '/' } })).toEqual([
      expect.stringMatching(/^Address: .+ \| https:\/\/other\.example\/$/),
    ])
  })
})

const lines = (kind: Differing['kind'], yours: object, theirs: object) =>
  differingFields({ kind, yours, theirs } as unknown as Differing).length

const plain = (changed: object) => changed

test('no field is left out: each that a schema knows has a line when it alone differs', () => {
  const [binding] = fakeMap().bindings
  const [one, control] = [fakeDevice(), binding!.control]
  const others: Record<string, unknown> = {
    ranges: [],
    terms: { condition: 'x' },
    climateZones: [1],
    stages: ['final'],
    procedures: ['one-point'],
    size: { above: 3 },
    address: { origin: 'https://x.example', path: '/' },
    further: [{ origin: 'https://x.example', path: '/' }],
    bindings: [],
    control: { ...control, attributes: { name: 'other' } },
    source: { from: 'text', text: 'x' },
    step: 7,
  }
  const untold = (kind: Differing['kind'], shape: object, of: object, as: (changed: object) => object, yours = of) =>
    Object.keys(shape).filter((key) => lines(kind, yours, as({ ...of, [key]: others[key] ?? 'x' })) === 0)
  const map = (changed: object) => fakeMap({ bindings: [changed as typeof binding & object] })
  expect(untold('device', deviceSchema.shape, one, plain)).toEqual(['id'])
  expect(untold('limit', keptLimitSchema.shape, limit, plain)).toEqual(['id'])
  expect(untold('limit', limitTermsSchema.shape, {}, (terms) => ({ ...limit, terms }), limit)).toEqual([])
  expect(untold('map', formMapSchema.shape, fakeMap(), plain)).toEqual(['id', 'version', 'created', 'updated'])
  expect(untold('map', bindingSchema.shape, binding!, map, map(binding!))).toEqual([])
  const clues = (changed: object) => map({ ...binding, control: changed })
  expect(untold('map', cluesSchema.shape, control, clues, map(binding!))).toEqual([])
})
