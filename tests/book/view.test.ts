import { describe, expect, test } from 'vitest'
import type { Item } from '../../lib/form/material.ts'
import { calibration } from '../../lib/view/book/calibration.ts'
import { fileName } from '../../lib/view/book/file-name.ts'
import { itemWords } from '../../lib/view/book/known-items.ts'
import { linesShown } from '../../lib/view/book/lines-shown.ts'
import { dropDraft, readDraft, whatIsMissing, writeDraft } from '../../lib/view/book/map-draft.ts'
import { hashOf, routeOf, type Route } from '../../lib/view/book/route.ts'
import { sourceWords, writeWords } from '../../lib/view/book/source-words.ts'
import { bytes, count, numeral } from '../../lib/view/parts/wording.ts'
import { fakeBinding, fakeFill, fakeLine, fakeMap } from './fake.ts'

describe('the address of a place in the book', () => {
  test.each<[string, Route]>([
    ['', { section: 'entries' }],
    ['#jobs', { section: 'jobs' }],
    ['#entry-12', { section: 'entries', entry: 12 }],
    ['#entry-0', { section: 'entries' }],
    ['#entry-1e3', { section: 'entries' }],
    ['#entries?job=a%26b', { section: 'entries', job: 'a&b' }],
    ['#entry-12?job=j', { section: 'entries', entry: 12, job: 'j' }],
    ['#maps?map=map-1', { section: 'maps', map: 'map-1' }],
    ['#nowhere', { section: 'entries' }],
  ])('%s', (hash, route) => {
    expect(routeOf(hash)).toEqual(route)
  })

  test('leads back to the place', () => {
    const routes: Route[] = [
      { section: 'limits' },
      { section: 'entries', entry: 7 },
      { section: 'entries', entry: 7, job: 'j' },
      { section: 'entries', job: 'a b&c#d' },
      { section: 'maps', map: 'x?y' },
    ]
    expect(routes.map((route) => routeOf(hashOf(route)))).toEqual(routes)
  })
})

const on = (calibrated: string, intervalMonths: string, now: string) =>
  calibration({ calibrated, intervalMonths }, new Date(`${now}T12:00:00`))

describe('a calibration', () => {
  test('holds to the end of its last day', () => {
    expect(on('2025-02-11', '12', '2026-02-11').overdue).toBe(false)
    expect(on('2025-02-11', '12', '2026-02-12').overdue).toBe(true)
  })

  test('that would end on a day that a month does not have ends on the last it has', () => {
    expect(on('2025-08-31', '6', '2026-02-28').overdue).toBe(false)
    expect(on('2025-08-31', '6', '2026-03-01').overdue).toBe(true)
    expect(on('2024-02-29', '12', '2025-02-28').overdue).toBe(false)
    expect(on('2024-02-29', '12', '2025-03-01').overdue).toBe(true)
  })

  test('without a date or a term is never said to have run out', () => {
    expect(on('', '12', '2026-01-01')).toEqual({ words: 'no calibration date', overdue: false })
    expect(on('2001-01-01', '', '2026-01-01').overdue).toBe(false)
    expect(on('2001-01-01', 'a year', '2026-01-01').overdue).toBe(false)
  })
})

function shelf() {
  const kept = new Map<string, string>()
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
    removeItem: (key: string) => void kept.delete(key),
  }
}

describe('the draft of a form map', () => {
  test('survives, belongs to one version, and goes when it is dropped', () => {
    const store = shelf()
    const map = fakeMap()
    const draft = { ...map, name: 'LC-7' }
    writeDraft(draft, store)
    expect(readDraft(map, store)).toEqual(draft)
    expect(readDraft({ ...map, version: 2 }, store)).toBeUndefined()
    dropDraft(map.id, store)
    expect(readDraft(map, store)).toBeUndefined()
  })

  test('that is not one is left alone', () => {
    const store = shelf()
    store.setItem('gapsum-map-draft-map-1', '{"half')
    expect(readDraft(fakeMap(), store)).toBeUndefined()
  })

  const address = { origin: 'https://permits.marrowby.example', path: '/sheet-4' }
  test.each([
    [{}, ''],
    [{ address: { ...address, path: '/claims/**' } }, ''],
    [{ address: { ...address, origin: 'http://localhost:8080' } }, ''],
    [{ name: ' ' }, 'Give the form map a name.'],
    [
      { address: { ...address, origin: 'permits.marrowby.example' } },
      'The site is a scheme and a host, for example https://permits.marrowby.example, without a path.',
    ],
    [{ address: { ...address, path: 'sheet-4' } }, 'The path begins with / and has no ? or #.'],
    [{ address: { ...address, path: '/a?token=1' } }, 'The path begins with / and has no ? or #.'],
    [{ address: { ...address, path: '/**/b' } }, 'Two stars ** stand only at the end of the path.'],
    [
      { bindings: [fakeBinding('a', 'Permit', { source: { from: 'item', item: '', write: {} } })] },
      'Choose a figure or field for “Permit”, or remove its binding.',
    ],
  ])('%j: %s', (change, said) => {
    expect(whatIsMissing(fakeMap(change))).toBe(said)
  })
})

describe('what a binding writes, in words:', () => {
  const flow: Item = { kind: 'quantity', label: 'CFM50', group: 'after', value: 754, unit: 'cfm', decimals: 0 }
  const items = new Map([['after/flow-50', flow]])

  test('an item that is known, one that is not, text, and words', () => {
    expect(itemWords('after/flow-50', items)).toBe('after: CFM50')
    expect(itemWords('duct system 1/duct-flow-25', items)).toBe('duct system 1: duct flow 25')
    expect(sourceWords({ from: 'text', text: 'n/a' }, items)).toBe('“n/a”')
    const parts = [{ text: 'now ' }, { item: 'after/flow-50', write: {} }, { text: ' cfm' }]
    expect(sourceWords({ from: 'words', parts }, items)).toBe('now [after: CFM50] cfm')
  })

  test('how it is written', () => {
    expect(writeWords({})).toBe('')
    expect(writeWords({ unit: 'ft2', decimals: 1, grouping: ',', mark: ',', rounding: 'half-even' })).toBe(
      'ft², 1 decimal, separator ,, decimal comma, half to even',
    )
    expect(writeWords({ date: 'MM/dd/yyyy' })).toBe('MM/dd/yyyy')
  })
})

test('bindings that a fill did not reach are shown as such, after those it wrote', () => {
  const entry = {
    ...fakeFill('a'),
    number: 1,
    at: '',
    complete: false,
    engine: '',
    previous: '',
    hash: '',
    lines: [fakeLine('flow')],
  }
  expect(linesShown(entry).map(({ binding, outcome }) => [binding, outcome])).toEqual([
    ['flow', 'entered'],
    ['volume', 'not reached'],
    ['report', 'not reached'],
  ])
})

test('numbers and names in words', () => {
  expect([count(1, 'entry', 'entries'), count(2, 'job')]).toEqual(['1 entry', '2 jobs'])
  expect([numeral(1), numeral(12), numeral(13)]).toEqual(['One', 'Twelve', '13'])
  expect([bytes(0), bytes(999), bytes(1500), bytes(84e9)]).toEqual(['0 B', '999 B', '1.5 kB', '84 GB'])
  expect(fileName('5 Fuller’s Yard / ../x', 'json', new Date('2026-02-11T12:00:00Z'))).toBe(
    'gapsum-5-fuller-s-yard-x-2026-02-11.json',
  )
})
