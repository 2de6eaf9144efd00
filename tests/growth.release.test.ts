/**
 * How the work of everything that reads the text of a page or file grows with its length: in proportion, whatever the
 * text. What is measured is this thread's own processor time, the least of several runs, so that a busy machine
 * changes nothing.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { demoJob } from '../lib/job/demo.ts'
import { material } from '../lib/job/material.ts'
import { suggestAll } from '../lib/form/map/suggest-all.ts'
import { fakeClues } from './form/fake.ts'
import { named } from './growth-others.ts'
import { readers } from './growth-readers.ts'

const figures = material(demoJob(), [])

/** Takes numbers, sheets and texts of our own only: tests/audit.test.ts holds these folders to what they may know. */
const without = /^(reduce|limits|engine|package|words|widget|sheet)\//
/** An exported function that draws nothing, up to its parameters. */
const exported = /^export (?:async )?(?:function\*? ([a-z]\w*)|const ([a-z]\w*)(?:: [^=\n]+)? = (?:async )?(?=[(<]))/gm
const text = /\b(string|unknown|Clues|Source|Blob|Uint8Array|ArrayBuffer|Readable)\b/

/** What stands between the first bracket of a source and the one that closes it. */
function bracketed(source: string): string {
  const start = source.indexOf('(')
  let depth = 0
  for (let at = start; at < source.length; at++) {
    if ('([{'.includes(source.charAt(at))) depth++
    if (')]}'.includes(source.charAt(at)) && --depth === 0) return source.slice(start, at)
  }
  return source.slice(start)
}

/** `folder/file name` of every exported function of lib/ that takes a text, or what holds texts. */
function takingTexts(): string[] {
  const lib = new URL('../lib/', import.meta.url)
  const files = readdirSync(lib, { recursive: true })
    .map((file) => String(file).replaceAll('\\', '/'))
    .filter((file) => /\.tsx?$/.test(file) && !without.test(file))
  return files.flatMap((file) => {
    const source = readFileSync(new URL(file, lib), 'utf8')
    return [...source.matchAll(exported)].flatMap(({ 0: { length }, 1: one, 2: other, index }) =>
      // A list of type parameters stands before the bracket.
      text.test(bracketed(source.slice(index + length - 1))) ? `${file.replace(/\.tsx?$/, '')} ${one ?? other}` : [],
    )
  })
}

test('every function that takes a text is measured here, or named with the reason why not', () => {
  const measured = new Set(Object.keys(readers).map((name) => name.split(' ').slice(0, 2).join(' ')))
  const all = takingTexts()
  expect(all.length).toBeGreaterThan(200)
  expect(all.filter((one) => !measured.has(one) && !named.has(one))).toEqual([])
  expect([...named].filter((one) => !all.includes(one))).toEqual([])
  expect([...named].filter((one) => measured.has(one))).toEqual([])
})

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
/** Those of files and of tables; one with `#` has another number in each repetition. */
const filed = '[ {"a": " \\ \\" <a> < &amp; ” ; , % %41'
  .split(' ')
  .concat(['\r\n', '\u0001\t', '# ', '#; ', '#,', '#\n', '"#":#,', '-#;', '\u0001#\t'])
/** What begins otherwise than it goes on. */
const begun = [
  ['-', '1'],
  ['=', ' '],
  [';-', '1'],
  ['1', ','],
  ['1', ';'],
  ['1', ' '],
  ['1,', '111,'],
  ['1.', '1'],
  ['"', '\\'],
  ['“', '1.5 '],
  ['a', ' '],
  ['(', 'required '],
  ['a.', 'a'],
  ['-', ' '],
]
const shapes = [
  ...[...pieces, ...more].flatMap((piece) => ['!', 'x'].map((end) => ['', piece, end] as const)),
  ...filed.map((piece) => ['', piece, '!'] as const),
  ...begun.flatMap(([start = '', piece = '']) => ['!', ''].map((end) => [start, piece, end] as const)),
]

const longest = Number(process.env['GROWTH'] ?? 16_000)
const lengths = [longest / 8, longest / 4, longest / 2, longest]
/** Processor time in ms that is too little to compare. */
const enough = 60

/** Processor time, in ms. Each text is a new one: what remembers texts does not remember these. */
async function work(
  read: (text: string) => unknown,
  [start, piece, end]: (typeof shapes)[number],
  length: number,
): Promise<number> {
  let least = Infinity
  const count = Math.ceil(length / piece.length)
  for (let run = 0; run < 3 && least > enough / 2; run++) {
    const middle = piece.includes('#')
      ? Array.from({ length: count }, (_, at) => piece.replaceAll('#', `${at}`))
          .join('')
          .slice(0, length)
      : piece.repeat(count)
    // A start counts only where nothing stands before it.
    const written = start ? `${start}${middle}${end}${end && run}` : `${run}${middle}${end}${run}`
    const before = process.threadCpuUsage()
    await read(written)
    const { user, system } = process.threadCpuUsage(before)
    least = Math.min(least, (user + system) / 1000)
    if (least > 2000) break
  }
  return least
}

test.each(Object.entries(readers))('%s: eight times the text is about eight times the work', async (_, read) => {
  const slow: unknown[] = []
  for (const shape of shapes) {
    // The clock counts in steps of some ms: what is done within a few of them is no matter.
    if ((await work(read, shape, longest)) <= enough) continue
    const all: number[] = []
    for (const length of lengths) all.push(await work(read, shape, length))
    const [first = 0, last = 0] = [all[0], all.at(-1)]
    // In proportion: 8. Squared: 64.
    if (last > enough && last > 24 * Math.max(first, 2.5)) slow.push([...shape, ...all])
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
