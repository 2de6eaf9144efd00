/** Entries as a table for a spreadsheet: one row for each binding, one for each entry about another. */
import { unparse } from 'papaparse'
import { entrySchema } from './entry-schema.ts'
import { isFill, saidBy } from './rows.ts'
import type { Entry, FillEntry, NoteEntry } from './schema.ts'

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
  'Corrects, repeats or is about entry',
  'Control',
  'Section',
  'Comes from',
  'Intended',
  'Stood there before',
  'Read back',
  'Outcome',
  'Note',
  'Status',
  'Confirmation number',
  'Due',
  'Keep until',
  'Fingerprint',
  'Fingerprint of the entry before',
]

/** What a spreadsheet might run as a formula, also in full-width form. Papa's own pattern misses a cell with a line break. */
const formula = /^[=+\-@\t\r\n＝＋－＠]/

/** What an entry says of each binding, and of those that the fill did not reach. */
function bindingsOf(entry: FillEntry): string[][] {
  const fileNote = (of: string): string => {
    const file = entry.files?.find(({ binding }) => binding === of)
    return file ? `${file.size} bytes, SHA-256 ${file.sha256}` : ''
  }
  const written = new Set(entry.lines.map(({ binding }) => binding))
  const lines = entry.lines.map((line) => [
    line.control,
    line.section,
    line.source,
    line.intended,
    line.before,
    line.readBack,
    line.outcome,
    [line.note, fileNote(line.binding)].filter(Boolean).join('; '),
  ])
  const notReached = entry.planned
    .filter(({ binding }) => !written.has(binding))
    .map((plan) => [plan.control, plan.section, plan.source, plan.text, '', '', 'not reached', 'the fill ended before'])
  const all = [...lines, ...notReached]
  return all.length > 0 ? all : [['', '', '', '', '', '', '', 'nothing was planned']]
}

const numberOrNone = (number: number | undefined) => (number === undefined ? '' : String(number))

function rowsOf(entry: Entry): string[][] {
  if (!entrySchema.safeParse(entry).success)
    return [header.map((_, at) => (at === 0 ? String(entry.number) : at === 2 ? 'damaged' : ''))]
  const start = [String(entry.number), entry.at, entry.kind, entry.job.name]
  const end = [entry.hash, entry.previous]
  if (!isFill(entry)) return [[...start, ...noteCells(entry), ...end]]
  const head = [
    ...start,
    entry.map.name,
    String(entry.map.version),
    entry.page.origin + entry.page.path,
    entry.page.title,
    entry.complete ? 'yes' : 'no',
    numberOrNone(entry.earlier),
  ]
  return bindingsOf(entry).map((binding) => head.concat(binding, ['', '', '', ''], end))
}

function noteCells(note: NoteEntry): string[] {
  const said = saidBy(note).join('; ')
  const about = ['', '', '', '', '', numberOrNone(note.of)]
  const binding = ['', '', '', '', '', '', '', said]
  if (note.kind !== 'follow-up') return [...about, ...binding, '', '', '', '']
  return [...about, ...binding, note.status, note.confirmation, note.due, note.keepUntil]
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
