/** The tables of figures, checks, limits, pages and measurements, written from the code: `npm run readme`. */
import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { testCheckNames } from '../lib/job/checks.ts'
import { publishedLimits } from '../lib/limits/index.ts'
import { checks } from '../lib/reduce/checks/index.ts'
import type { Need } from '../lib/reduce/figures/figure.ts'
import { figures } from '../lib/reduce/figures/index.ts'
import { symbol } from '../lib/units/symbol.ts'
import { text as numeral, type Kept } from './bench/part.ts'

const at = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url))
const read = (path: string): string => readFileSync(at(path), 'utf8')

const needWords: Record<Need, string> = {
  volume: 'volume',
  floorArea: 'floor area',
  enclosureArea: 'enclosure area',
  enclosureAreaWithoutFloor: 'enclosure area without the lowest floor',
  height: 'height',
  bedrooms: 'bedrooms',
  weatherShieldingFactor: 'weather and shielding factor',
  airHandlerFlow: 'air-handler flow',
  fit: 'a regression',
}

const line = (cells: string[]): string => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`

function table(head: string[], rows: string[][]): string {
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n')
}

const camel = (id: string): string => id.replaceAll(/-(\w)/g, (_, letter: string) => letter.toUpperCase())

/** What the doc comment right before an exported name says after “Source:”; nothing when it says nothing. */
export function sourceIn(code: string, name: string): string | undefined {
  const place = new RegExp(`^export (?:const|function) ${name}\\b`, 'm').exec(code)?.index ?? 0
  const before = code.slice(0, place).trimEnd()
  if (!before.endsWith('*/')) return undefined
  const comment = before.slice(before.lastIndexOf('/**'))
  const words = comment.replaceAll(/^\s*\/?\*+\/?|\*\/$/gm, '').replaceAll(/\s+/g, ' ')
  return /Source: (.+?)\.? *$/.exec(words)?.[1]
}

/** The source of a check, from its own file. */
export function sourceOfCheck(id: string): string | undefined {
  const folder = id in testCheckNames ? 'job' : 'reduce'
  return sourceIn(read(`lib/${folder}/checks/${id}.ts`), camel(id))
}

interface PageResult {
  page: string
  controls: { kind: string; is: string; undone: string }[]
}

/** What became of every control of every test page, a page a row. */
function pagesTable(): string {
  const results = JSON.parse(read('tests/pages/frameworks/results.json')) as PageResult[]
  const row = (page: string, controls: PageResult['controls'], kinds: readonly string[]) => {
    const count = (fits: (one: PageResult['controls'][number]) => boolean) => String(controls.filter(fits).length)
    const tried = controls.filter(({ undone }) => undone !== '')
    return [
      page,
      String(controls.length),
      count(({ is }) => is === 'right'),
      count(({ is }) => is === 'told'),
      count(({ is }) => is === 'silently wrong'),
      tried.length > 0 ? `${count(({ undone }) => undone === 'back')} of ${tried.length}` : 'a step gone by',
      kinds.join(', '),
    ]
  }
  const all = results.flatMap(({ controls }) => controls)
  return table(
    ['page', 'controls', 'right', 'told', 'silently wrong', 'put back', 'kinds'],
    [
      ...results.map(({ page, controls }) => row(page, controls, [...new Set(controls.map(({ kind }) => kind))])),
      row('all', all, []),
    ],
  )
}

/** What was measured and kept with `npm run bench -- --keep`: what has an aim, and every ratio. */
function benchTable(): string {
  const kept = JSON.parse(read('tests/bench/results.json')) as Record<string, Kept>
  return table(
    ['part', 'what', 'measured', 'aim', ''],
    Object.entries(kept).flatMap(([part, { rows }]) =>
      rows
        .filter(({ met, unit }) => met !== undefined || unit.startsWith('x'))
        .map(({ what, value, unit, aim = '', met }) => [
          part,
          what,
          `${numeral(value)} ${unit}`.trim(),
          aim,
          met === undefined ? '' : met ? 'met' : 'not met',
        ]),
    ),
  )
}

/** On which days and machines. */
function benchPlace(): string {
  const kept = Object.values(JSON.parse(read('tests/bench/results.json')) as Record<string, Kept>)
  return `Measured ${[...new Set(kept.map(({ date, machine }) => `${date} on ${machine}`))].join('; ')}.`
}

/** What stands between `<!-- name -->` and `<!-- /name -->`. */
const parts = {
  figures: () =>
    table(
      ['id', 'figure', 'units', 'needs, beside readings', 'formula', 'source'],
      figures.map(({ id, name, label, labels, decimals, needs, formula, source }) => [
        `\`${id}\``,
        `${name} (${[...new Set([...Object.values(labels ?? {}), label])].join(', ')})`,
        Object.keys(decimals)
          .map((unit) => symbol(unit) || '1')
          .join(', '),
        needs.map((need) => needWords[need]).join(', ') || 'nothing',
        formula,
        source,
      ]),
    ),
  checks: () =>
    table(
      ['id', 'check', 'source'],
      [...checks.map(({ id, name }) => [id, name]), ...Object.entries(testCheckNames)].map(([id = '', name = '']) => [
        `\`${id}\``,
        name,
        sourceOfCheck(id) ?? '',
      ]),
    ),
  limits: () =>
    table(
      ['limit', 'clause', 'known'],
      publishedLimits.map(({ title, clause, confidence, checked }) => [title, clause, `${confidence}, ${checked}`]),
    ),
  pages: pagesTable,
  bench: () => `${benchPlace()}\n\n${benchTable()}`,
}

/** Each file with tables, and which. */
export const files: Readonly<Record<string, readonly (keyof typeof parts)[]>> = {
  'lib/reduce/README.md': ['figures', 'checks'],
  'lib/limits/README.md': ['limits'],
  'tests/pages/README.md': ['pages'],
  'tests/bench/README.md': ['bench'],
}

/** A file with its tables as the code has them now. */
export function written(file: string, now: string): string {
  return (files[file] ?? []).reduce((text, name) => {
    const [start, end] = [`<!-- ${name} -->`, `<!-- /${name} -->`]
    const [from, to] = [text.indexOf(start), text.indexOf(end)]
    if (from < 0 || to < from) throw new Error(`${file} has no place for the ${name}: put back ${start} and ${end}.`)
    return `${text.slice(0, from + start.length)}\n\n${parts[name]()}\n\n${text.slice(to)}`
  }, now)
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const file of Object.keys(files)) writeFileSync(at(file), written(file, read(file)))
}
