import { expect, test } from 'vitest'
import type { FigureGroup } from '../../lib/results/shown.ts'
import { movePin, ownFirst, setDecimals, togglePin } from '../../lib/results/own.ts'

const line = (id: string, value: number) => ({
  id,
  name: id,
  detail: '',
  value: value.toFixed(0),
  margin: '',
  interval: '',
  unit: 'cfm',
  note: '',
  steps: [],
  found: { value, unit: 'cfm', low: value - 2.5, high: value + 2.5 },
})
const groups: FigureGroup[] = [
  { title: 'what forms ask', lines: [line('a', 753.68), line('b', 12)] },
  { title: 'test quality', lines: [line('c', 3)] },
]
const titles = (list: readonly FigureGroup[]) => list.map(({ title, lines }) => [title, ...lines.map(({ id }) => id)])

test('pinned figures stand first in their order, and each figure once', () => {
  expect(titles(ownFirst(groups, [{ id: 'c' }, { id: 'a' }]))).toEqual([
    ['own figures', 'c', 'a'],
    ['what forms ask', 'b'],
  ])
  expect(ownFirst(groups, [])).toBe(groups)
  expect(ownFirst(groups, [{ id: 'not here' }])).toBe(groups)
})

test('a chosen rounding is what is shown and copied, half up from the unrounded value', () => {
  const [own] = ownFirst(groups, [{ id: 'a', decimals: 1 }])
  expect(own!.lines[0]).toMatchObject({ value: '753.7', margin: '2.5' })
})

test('pins are set, taken away, moved among those that are shown, and keep their decimals', () => {
  const own = togglePin(togglePin(togglePin([], 'a'), 'x'), 'b')
  expect(own.map(({ id }) => id)).toEqual(['a', 'x', 'b'])
  const shown = new Set(['a', 'b'])
  expect(movePin(own, 'b', -1, shown).map(({ id }) => id)).toEqual(['b', 'x', 'a'])
  expect(movePin(own, 'a', -1, shown)).toEqual(own)
  const rounded = setDecimals(own, 'a', 2)
  expect(rounded[0]).toEqual({ id: 'a', decimals: 2 })
  expect(setDecimals(rounded, 'a', undefined)[0]).toEqual({ id: 'a' })
  expect(togglePin(own, 'x').map(({ id }) => id)).toEqual(['a', 'b'])
})
