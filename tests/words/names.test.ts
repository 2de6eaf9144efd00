/** Names that are kept in English, where the reader has another language: here one that puts each word in brackets. */
import { expect, test, vi } from 'vitest'
import { tickWords } from '../../lib/view/dock/tick-words.ts'
import { roleWords } from '../../lib/words/names.ts'

vi.mock('../../lib/words/say.ts', () => ({
  say: (texts: TemplateStringsArray, ...values: string[]) =>
    `[${texts.reduce((all, text, at) => all + (values[at - 1] ?? '') + text)}]`,
  shown: (text: string) => `[${text}]`,
}))

test.each([
  ['before', '[before]'],
  ['before (2)', '[before] (2)'],
  ['duct system 2', '[duct system] 2'],
  ['duct system 2 (3)', '[duct system] 2 (3)'],
  ['duct systems from 2', '[duct systems from 2]'],
  ['final, both directions', '[final], [both directions]'],
  ['after (2), zone 1', '[after] (2), [zone] 1'],
])('the role %s', (role, words) => {
  expect(roleWords(role)).toBe(words)
})

test('a tick is read in words, what is typed as it is', () => {
  expect(['checked', 'not checked', '754', 'Checked', ''].map(tickWords)).toEqual([
    '[checked]',
    '[not checked]',
    '754',
    'Checked',
    '',
  ])
})
