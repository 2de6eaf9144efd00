/** Entries as a table for a spreadsheet: one row for each binding. */
import { unparse } from 'papaparse'
import type { Entry } from './schema.ts'

const header = [
  'Entry',
  'Added at',
  'Kind',
  'Job',
  'Form map',
  'Form map version',
  'Page',
  'Page title',
  'Went to its end',
  'Corrects or repeats entry',
  'Control',
  'Section',
  'Comes from',
  'Intended',
  'Stood there before',
  'Read back',
  'Outcome',
  'Note',
  'Fingerprint',
  'Fingerprint of the entry before',
]

/** What a spreadsheet might run as a formula, also in full-width form. Papa's own pattern misses a cell with a line break. */
const formula = /^[=+\-@\t\r\n＝＋－＠]/

/** What an entry says of each binding, and of those that the fill did not reach. */
function bindingsOf(entry: Entry): string[][] {
  const written = new Set(entry.lines.map(({ binding }) => binding))
  const lines = entry.lines.map((line) => [
    line.control,
    line.section,
    line.source,
    line.intended,
    line.before,
    line.readBack,
    line.outcome,
    line.note,
  ])
  const notReached = entry.planned
    .filter(({ binding }) => !written.has(binding))
    .map((plan) => [plan.control, plan.section, plan.source, plan.text, '', '', 'not reached', 'the fill ended before'])
  const all = [...lines, ...notReached]
  return all.length > 0 ? all : [['', '', '', '', '', '', '', 'nothing was planned']]
}

function rowsOf(entry: Entry): string[][] {
  const head = [
    String(entry.number),
    entry.at,
    entry.kind,
    entry.job.name,
    entry.map.name,
    String(entry.map.version),
    entry.page.origin + entry.page.path,
    entry.page.title,
    entry.complete ? 'yes' : 'no',
    entry.earlier === undefined ? '' : String(entry.earlier),
  ]
  return bindingsOf(entry).map((binding) => head.concat(binding, entry.hash, entry.previous))
}

/**
 * Yields the table (RFC 4180) piece by piece, with a byte order mark so that spreadsheets read it as UTF-8. A cell that
 * a spreadsheet might run as a formula is led by an apostrophe.
 */
export async function* csvParts(entries: Iterable<Entry> | AsyncIterable<Entry>): AsyncGenerator<string> {
  yield '\uFEFF' + unparse([header], { newline: '\r\n' }) + '\r\n'
  for await (const entry of entries) {
    yield unparse(rowsOf(entry), { newline: '\r\n', escapeFormulae: formula }) + '\r\n'
  }
}
