/** Entries as a table for a spreadsheet: one row for each binding, one for each entry about another. */
import { csvRows } from '../csv.ts'
import { labelOf } from '../reduce/figures/index.ts'
import { symbol } from '../units/symbol.ts'
import type { HeldTest } from './basis-schema.ts'
import type { Placed } from './entries.ts'
import { entrySchema } from './entry-schema.ts'
import { isFill, saidBy, testedOn } from './rows.ts'
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
  'Tester',
  'Company',
  'Licence',
  'Device',
  'Serial number',
  'Calibrated',
  'Dates of tests',
  'Figures',
  'Test',
  'Compared figure',
  'Value',
  'From (95 %)',
  'To (95 %)',
  'Unit',
  'Limit',
  'Verdict',
  'Written in book',
  'Book beside',
]

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

/** `beside`: what the book beside one's own is called that the entry stands in; empty: one's own. */
function rowsOf(entry: Entry, beside: string): string[][] {
  if (!entrySchema.safeParse(entry).success)
    return [header.map((_, at) => ({ 0: String(entry.number), 2: 'damaged', [header.length - 1]: beside })[at] ?? '')]
  const start = [String(entry.number), entry.at, entry.kind, entry.job.name]
  const end = [entry.hash, entry.previous]
  const none = Array.from({ length: 12 }, () => '')
  const place = [entry.book ?? '', beside]
  if (!isFill(entry)) return [[...start, ...noteCells(entry), ...end, ...none, ...none.slice(0, 4), ...place]]
  const head = [
    ...start,
    entry.map.name,
    String(entry.map.version),
    entry.page.origin + entry.page.path,
    entry.page.title,
    entry.complete ? 'yes' : 'no',
    numberOrNone(entry.earlier),
  ]
  return bindingsOf(entry).map((binding) => head.concat(binding, ['', '', '', ''], end, behindCells(entry), place))
}

const listed = (texts: readonly string[]): string => texts.filter(Boolean).join('; ')

/** Who tested, with what, when, and what came of it; empty where an entry of an earlier version does not hold it. */
function behindCells(entry: FillEntry): string[] {
  const { readings, basis } = entry
  const { tester } = readings ?? {}
  const devices = basis?.devices ?? []
  const tests = basis?.tests ?? []
  const compared = tests.findLast(({ limit }) => limit !== undefined)
  return [
    tester?.name ?? '',
    tester?.company ?? '',
    tester?.licence ?? '',
    listed(devices.map(({ name }) => name)),
    listed(devices.map(({ serial }) => serial)),
    listed(devices.map(({ calibrated }) => calibrated)),
    listed(testedOn(entry)),
    listed(tests.map(figuresText)),
    ...comparedCells(compared),
  ]
}

/** The figures that a test is known by, in its own words. */
function figuresText({ key, figures }: HeldTest): string {
  const texts = ['flow-50', 'air-changes-50', 'duct-flow-25', 'duct-flow-25-per-floor-area'].flatMap((id) => {
    const found = figures[id]
    return found ? `${labelOf(id, found.unit)} ${Number(found.value.toPrecision(6))} ${symbol(found.unit)}`.trim() : []
  })
  return texts.length > 0 ? `${key}: ${texts.join(', ')}` : ''
}

/** The figure that the last test with a limit is compared by, and what comes of it. */
function comparedCells(test: HeldTest | undefined): string[] {
  const { limit, verdict } = test ?? {}
  const found = limit && test?.figures[limit.figure]
  return [
    test?.key ?? '',
    limit ? labelOf(limit.figure, found?.unit ?? limit.unit) : '',
    numberOrNone(found?.value),
    numberOrNone(found?.low),
    numberOrNone(found?.high),
    found ? symbol(found.unit) : '',
    limit ? `${limit.value} ${symbol(limit.unit)}`.trim() : '',
    verdict?.outcome ?? '',
  ]
}

function noteCells(note: NoteEntry): string[] {
  const said = saidBy(note).join('; ')
  const about = ['', '', '', '', '', numberOrNone(note.of)]
  const binding = ['', '', '', '', '', '', '', said]
  if (note.kind !== 'follow-up') return [...about, ...binding, '', '', '', '']
  return [...about, ...binding, note.status, note.confirmation, note.due, note.keepUntil]
}

/**
 * Yields the table (RFC 4180) piece by piece, with a byte order mark so that spreadsheets read it as UTF-8. No cell can
 * run as a formula (`lib/csv.ts`).
 * @param books what books beside one's own are called, by their key
 */
export async function* csvParts(
  entries: Iterable<Entry | Placed> | AsyncIterable<Entry | Placed>,
  books: ReadonlyMap<string, string> = new Map(),
): AsyncGenerator<string> {
  yield '\uFEFF' + csvRows([header])
  for await (const one of entries) {
    const { entry, book } = 'entry' in one ? one : { entry: one, book: '' }
    yield csvRows(rowsOf(entry, books.get(book) ?? book))
  }
}
