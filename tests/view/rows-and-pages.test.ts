import { expect, test } from 'vitest'
import { whyBarred } from '../../lib/extension/page.ts'
import { rowWindow } from '../../lib/view/calculator/row-window.ts'
import { readViewState, writeViewState } from '../../lib/view/calculator/view-state.ts'

test('a short table is drawn whole', () => {
  expect(rowWindow(3, 200)).toEqual({ rows: [0, 1, 2], hidden: 0 })
})

test('of a long one the first rows and the one to type on are drawn', () => {
  const { rows, hidden } = rowWindow(5001, 200)
  expect(rows).toHaveLength(201)
  expect(rows.at(-1)).toBe(5000)
  expect(hidden).toBe(4800)
})

test('forms on the web and on this machine can be filled', () => {
  expect(whyBarred('https://forms.marrowby.example/lc-7')).toBe('')
  expect(whyBarred('http://127.0.0.1:8080/')).toBe('')
})

test.each([
  'chrome://settings/',
  'about:addons',
  'https://addons.mozilla.org/x',
  'moz-extension://a/b',
  'not an address',
])('the helper does not try %s, and says why', (url) => {
  expect(whyBarred(url)).toMatch(/\.$/)
})

test('a view comes back as it was left, and a damaged state as a fresh one', () => {
  const kept = new Map<string, string>()
  writeViewState({ setItem: (key, text) => void kept.set(key, text) }, { scroll: 120, open: { figures: false } })
  const storage = { getItem: (key: string) => kept.get(key) ?? null }
  expect(readViewState(storage)).toEqual({ scroll: 120, open: { readings: true, figures: false } })
  expect(readViewState({ getItem: () => '[' })).toEqual({ scroll: 0, open: { readings: true, figures: true } })
  expect(readViewState({ getItem: () => '{"scroll":"x","open":7}' }).scroll).toBe(0)
})
