/** The short form of an entry, for lists and search. */
import { outcomes, type Outcome } from '../form/schema.ts'
import type { FillRow, NoteRow } from './row-schema.ts'
import type { Entry, FillEntry, FollowUp, NoteEntry, Status } from './schema.ts'
import { searchable, soughtIn, stands } from './words.ts'

export type { FillRow, NoteRow }

/** `book`: key of the book beside one's own that it stands in; never kept with the row. */
export type Row = (FillRow | NoteRow) & { book?: string }

export const isFill = <T extends { kind: Entry['kind'] }>(one: T): one is Extract<T, { kind: FillEntry['kind'] }> =>
  one.kind === 'fill' || one.kind === 'undo'

export function rowOf(entry: Entry): Row {
  return isFill(entry) ? fillRow(entry) : noteRow(entry)
}

function fillRow(entry: FillEntry): FillRow {
  const counts: FillRow['counts'] = {}
  for (const outcome of outcomes) {
    const count = entry.lines.filter((line) => line.outcome === outcome).length
    if (count > 0) counts[outcome] = count
  }
  const tested = testedOn(entry)
  return {
    number: entry.number,
    at: entry.at,
    kind: entry.kind,
    job: entry.job,
    map: entry.map,
    page: entry.page,
    counts,
    planned: entry.planned.length,
    complete: entry.complete,
    ...(entry.earlier !== undefined && { earlier: entry.earlier }),
    ...(entry.kind === 'fill' && { status: entry.complete ? 'entered' : 'draft' }),
    ...(tested.length > 0 && { tested }),
    hash: entry.hash,
    text: searchable(textsOf(entry)),
  }
}

/** The days of the tests that an entry holds, the earliest first. */
export function testedOn({ readings }: FillEntry): string[] {
  const days = (readings?.tests ?? []).map(({ date }) => date).filter((date) => /^\d{4}-\d{2}-\d{2}$/.test(date))
  return [...new Set(days)].toSorted()
}

/** Address, job, tester, devices, days of the tests, form map, and of every control its name and texts. */
function textsOf(entry: FillEntry): string[] {
  const { building, tester } = entry.readings ?? {}
  return [
    String(entry.number),
    entry.job.name,
    entry.map.name,
    entry.page.origin,
    entry.page.path,
    entry.page.title,
    entry.hash,
    ...(building ? [building.street, building.town, building.permit, building.program] : []),
    ...(tester ? [tester.name, tester.company, tester.licence] : []),
    ...(entry.basis?.devices ?? []).flatMap(({ name, serial }) => [name, serial]),
    ...testedOn(entry),
    ...entry.lines.flatMap((line) => [line.control, line.section, line.intended, line.readBack]),
    ...entry.planned.flatMap(({ control, text }) => [control, text]),
    ...(entry.files ?? []).map(({ sha256 }) => sha256),
  ]
}

function noteRow(entry: NoteEntry): NoteRow {
  const said = saidBy(entry)
  return {
    number: entry.number,
    at: entry.at,
    kind: entry.kind,
    job: entry.job,
    ...(entry.of !== undefined && { of: entry.of }),
    words: said.slice(0, 3).join(', ').slice(0, 300),
    hash: entry.hash,
    text: searchable([
      String(entry.number),
      entry.job.name,
      entry.hash,
      entry.kind,
      ...(entry.kind === 'attachment' ? [entry.file.sha256] : []),
      ...said,
    ]),
  }
}

/** What a note says, the most telling first. */
export function saidBy(note: NoteEntry): string[] {
  switch (note.kind) {
    case 'follow-up':
      return [note.status, note.confirmation, note.reason, note.text].filter(Boolean)
    case 'correction':
      return [note.reason, note.text].filter(Boolean)
    case 'attachment':
      return [note.file.name, note.text].filter(Boolean)
    case 'review':
      return [note.reviewer, ...note.findings.flatMap(({ about, text }) => [about, text]), note.text].filter(Boolean)
  }
}

const ended = new Set<Status>(['accepted', 'resubmitted'])

/** The row of a fill after a follow-up of it. */
export function followed(row: FillRow, note: FollowUp & { number: number }): FillRow {
  const { due: dueBefore, ...rest } = row
  const due = ended.has(note.status) ? undefined : note.due || dueBefore
  const confirmation = note.confirmation || row.confirmation
  const keepUntil = note.keepUntil || row.keepUntil
  return {
    ...rest,
    status: note.status,
    ...(due && { due }),
    ...(confirmation && { confirmation }),
    ...(keepUntil && { keepUntil }),
    text: note.confirmation ? `${row.text}\n${searchable([note.confirmation])}` : row.text,
  }
}

export type Filter = {
  /** Words that must all occur, each at least with its beginning. */
  text?: string
  /** First and last day, YYYY-MM-DD, by this machine's calendar. */
  from?: string
  to?: string
  /** Id of a job. */
  job?: string
  /** Id of a form map. */
  map?: string
  kind?: Entry['kind']
  /** 'to look at': any binding that is not plainly entered, or a fill that did not end. */
  outcome?: Outcome | 'to look at'
  status?: Status
  /** First and last day of a test, YYYY-MM-DD. */
  testedFrom?: string
  testedTo?: string
  /** Only those with a day until which the record is to be kept. */
  kept?: boolean
  /** Only those whose record is to be kept until this day, YYYY-MM-DD, or an earlier one. */
  keptTo?: string
  /** Key of a book that is kept beside; empty or left out: one's own; `everyBook`: all of them. */
  book?: string
}

export const everyBook = '*'

/** When the days of a filter begin and end; a day ends where the next begins, also on a day of 23 or 25 hours. */
export function spanOf({ from, to }: Pick<Filter, 'from' | 'to'>): { from: string; until: string } {
  return { from: from ? startOfDay(from, 0) : '', until: to ? startOfDay(to, 1) : '' }
}

/** Whether a row passes the filter. */
export function passes(filter: Filter): (row: Row) => boolean {
  const pieces = soughtIn(filter.text ?? '').pieces.map(stands)
  const { from, until } = spanOf(filter)
  return (row) =>
    (!filter.job || row.job.id === filter.job) &&
    (!filter.map || (isFill(row) && row.map.id === filter.map)) &&
    (!filter.kind || row.kind === filter.kind) &&
    (!from || row.at >= from) &&
    (!until || row.at < until) &&
    (!filter.outcome || (isFill(row) && hasOutcome(row, filter.outcome))) &&
    (!filter.status || (isFill(row) && row.status === filter.status)) &&
    (!filter.kept || (isFill(row) && Boolean(row.keepUntil))) &&
    (!filter.keptTo || (isFill(row) && Boolean(row.keepUntil) && row.keepUntil! <= filter.keptTo)) &&
    ((!filter.testedFrom && !filter.testedTo) || (isFill(row) && wasTested(row, filter))) &&
    pieces.every((isIn) => isIn(row.text))
}

const wasTested = ({ tested = [] }: FillRow, { testedFrom = '', testedTo = '' }: Filter): boolean =>
  tested.some((day) => day >= testedFrom && (!testedTo || day <= testedTo))

export function isToLookAt({ complete, counts }: Pick<FillRow, 'complete' | 'counts'>): boolean {
  return !complete || outcomes.some((outcome) => outcome !== 'entered' && counts[outcome])
}

function hasOutcome(row: FillRow, outcome: NonNullable<Filter['outcome']>): boolean {
  return outcome === 'to look at' ? isToLookAt(row) : (row.counts[outcome] ?? 0) > 0
}

function startOfDay(iso: string, daysLater: number): string {
  const [year, month, day] = iso.split('-').map(Number)
  const date = new Date(year ?? 0, (month ?? 1) - 1, (day ?? 1) + daysLater)
  return Number.isNaN(date.getTime()) ? '' : date.toISOString()
}
