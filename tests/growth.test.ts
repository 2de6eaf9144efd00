/**
 * How the work of everything that reads the text of a page or file grows with its length: in proportion, whatever the
 * text. What is measured is this thread's own processor time, the least of several runs, so that a busy machine
 * changes nothing.
 */
import { expect, test } from 'vitest'
import { cut } from '../lib/bounds.ts'
import { fromBase64 } from '../lib/book/base64.ts'
import { searchable, soughtIn, stands, wordsOf } from '../lib/book/words.ts'
import { choose } from '../lib/form/choose.ts'
import { looksGenerated } from '../lib/form/clues.ts'
import { datePart } from '../lib/form/date-part.ts'
import { patternIn, readDate } from '../lib/form/dates.ts'
import { figuresCsv, whyNoFile } from '../lib/form/file.ts'
import { fit } from '../lib/form/find.ts'
import { readAnyDate } from '../lib/form/read/calendar.ts'
import { partNumber } from '../lib/form/read/date-parts.ts'
import { alikeIn } from '../lib/form/same-entry.ts'
import { suggestAll } from '../lib/form/suggest-all.ts'
import { suggest } from '../lib/form/suggest.ts'
import { textOf } from '../lib/form/text.ts'
import { unitIn } from '../lib/form/unit-in.ts'
import { alike, asksAlike, contradict, gist, narrower, plain, squeeze, tidy, words } from '../lib/form/words.ts'
import { readCell } from '../lib/job/read-cell.ts'
import { readPaste } from '../lib/job/paste.ts'
import { demoJob } from '../lib/job/demo.ts'
import { material } from '../lib/job/material.ts'
import { readNumber } from '../lib/units/read.ts'
import { fakeClues } from './form/fake.ts'

const figures = material(demoJob(), [])
const none = { job: { id: 'j', name: 'j' }, items: {} }

/** What reads a text, by its name. */
const readers: Readonly<Record<string, (text: string) => unknown>> = {
  cut: (text) => cut(text),
  squeeze,
  tidy,
  plain,
  words,
  gist,
  alike: (text) => alike(text, `${text} q`),
  contradict: (text) => contradict(text, `${text} 7 before`),
  asksAlike: (text) => asksAlike(text, `q ${text}`),
  narrower: (text) => narrower(text, `q ${text}`),
  readNumber,
  readCell: (text) => readCell(text, 'cfm'),
  readPaste,
  looksGenerated: (text) => looksGenerated(text, `q ${text}`),
  choose: (text) => choose('Yes', ['yes', text], [text, `${text} q`, 'q']),
  datePart,
  patternIn,
  readDate: (text) => readDate(text, 'MM/dd/yyyy'),
  readAnyDate: (text) => readAnyDate(text, 'd.M.yyyy'),
  partNumber,
  'alikeIn a box': (text) => alikeIn('combobox', 'Yes; No', text),
  'alikeIn chips': (text) => alikeIn('chips', text, `${text} q`),
  'alikeIn a list': (text) => alikeIn('listbox', text, `${text} q`),
  'alikeIn an editor': (text) => alikeIn('rich-text', text, `${text} q`),
  unitIn,
  'a fixed text for a number': (text) => textOf({ from: 'text', text }, none, fakeClues({ kind: 'number' })),
  'a fixed text for a line': (text) => textOf({ from: 'text', text }, none, fakeClues()),
  'a fixed text for a list': (text) =>
    textOf({ from: 'text', text }, none, fakeClues({ kind: 'select', options: [text] })),
  'a damaged file': (text) => whyNoFile({ from: 'file', name: 'a', type: 'b', bytes: text }, none),
  figuresCsv: (text) => figuresCsv({ ...none, items: { a: { kind: 'text', label: text, group: text, text } } }),
  fit: (text) =>
    fit(
      fakeClues({ name: text, section: text, placeholder: text, options: [text], attributes: { name: text } }),
      fakeClues({ name: `q ${text}`, section: `q ${text}`, options: [`q ${text}`] }),
    ),
  suggest: (text) =>
    suggest(fakeClues({ name: text, section: text, attributes: { name: text }, placeholder: text }), figures),
  searchable: (text) => searchable([text, `${text} q`]),
  wordsOf,
  soughtIn,
  stands: (text) => stands('q')(text),
  fromBase64,
}

/** Texts that make an expression try anew at every character: by the piece that is repeated, then one that fits not. */
const pieces = [':', '*', ' ', '\n', '\t', '(', '()', ')', '1', '1 ', '1,', '1.', '-', '−', '_', 'a', 'a1', 'A', 'Aa']
const more = [
  'the ',
  'cfm ',
  '50 per ',
  'before ',
  ', ',
  '; ',
  '× ',
  '/',
  'é',
  '\u0001',
  '\u00A0',
  '“',
  '=',
  'jan ',
  'MM/',
  '((1,',
]
const shapes = [...pieces, ...more].flatMap((piece) => ['!', 'x'].map((end) => [piece, end] as const))

const longest = 32_000
const lengths = [longest / 8, longest / 4, longest / 2, longest]
/** Processor time in ms that is too little to compare. */
const enough = 60

/** Processor time, in ms. Each text is a new one: what remembers texts does not remember these. */
function work(read: (text: string) => unknown, piece: string, end: string, length: number): number {
  let least = Infinity
  for (let run = 0; run < 3 && least > enough / 2; run++) {
    const text = `${run}${piece.repeat(Math.ceil(length / piece.length))}${end}${run}`
    const before = process.threadCpuUsage()
    read(text)
    const { user, system } = process.threadCpuUsage(before)
    least = Math.min(least, (user + system) / 1000)
    if (least > 2000) break
  }
  return least
}

test.each(Object.entries(readers))('%s: eight times the text is about eight times the work', (_, read) => {
  const slow: unknown[] = []
  for (const [piece, end] of shapes) {
    // The clock counts in steps of some ms: what is done within a few of them is no matter.
    if (work(read, piece, end, longest) <= enough) continue
    const all = lengths.map((length) => work(read, piece, end, length))
    const [first = 0, last = 0] = [all[0], all.at(-1)]
    // In proportion: 8. Squared: 64.
    if (last > enough && last > 24 * Math.max(first, 2.5)) slow.push([piece, end, ...all])
  }
  expect(slow).toEqual([])
})

const rest = (count: number) =>
  Array.from({ length: count }, (_, at) =>
    fakeClues({ name: at % 3 ? `System ${at}` : 'All other systems', section: 'Ducts', attributes: {} }),
  )

test('eight times the controls are about eight times the work of suggesting', () => {
  const [few, many] = [250, 2000].map((count) => {
    const controls = rest(count)
    const before = process.threadCpuUsage()
    suggestAll(controls, figures)
    const { user, system } = process.threadCpuUsage(before)
    return (user + system) / 1000
  })
  expect(many! / few!).toBeLessThan(24)
})
