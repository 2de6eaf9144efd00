/** The short form of an entry, for lists and search. */
import { outcomes, type Outcome } from '../form/schema.ts'
import type { Entry } from './schema.ts'

export type Row = {
  number: number
  at: string
  kind: Entry['kind']
  job: Entry['job']
  map: Entry['map']
  page: Entry['page']
  /** Bindings by outcome; an outcome that did not occur is left out. */
  counts: Partial<Record<Outcome, number>>
  planned: number
  complete: boolean
  earlier?: number
  hash: string
  /** Everything that is searched, in lower case. */
  text: string
}

export function rowOf(entry: Entry): Row {
  const counts: Row['counts'] = {}
  for (const outcome of outcomes) {
    const count = entry.lines.filter((line) => line.outcome === outcome).length
    if (count > 0) counts[outcome] = count
  }
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
    hash: entry.hash,
    text: searchText(entry),
  }
}

/** Address, job, form map, and of every control its name and texts; each different text once. */
function searchText(entry: Entry): string {
  const texts = new Set([
    String(entry.number),
    entry.job.name,
    entry.map.name,
    entry.page.origin,
    entry.page.path,
    entry.page.title,
    entry.hash,
  ])
  const building = entry.readings?.building
  if (building) for (const text of [building.street, building.town, building.permit, building.program]) texts.add(text)
  for (const line of entry.lines) {
    for (const text of [line.control, line.section, line.intended, line.readBack]) texts.add(text)
  }
  for (const { control, text } of entry.planned) texts.add(control).add(text)
  return [...texts].join('\n').toLowerCase()
}

export type Filter = {
  /** Words that must all occur. */
  text?: string
  /** First and last day, YYYY-MM-DD, by this machine's calendar. */
  from?: string
  to?: string
  /** Id of a job. */
  job?: string
  /** Id of a form map. */
  map?: string
  /** 'to look at': any binding that is not plainly entered, or a fill that did not end. */
  outcome?: Outcome | 'to look at'
}

/** Whether a row passes the filter. */
export function passes(filter: Filter): (row: Row) => boolean {
  const words = (filter.text ?? '').toLowerCase().split(/\s+/).filter(Boolean)
  // A day ends where the next begins, also on a day of 23 or 25 hours.
  const from = filter.from ? startOfDay(filter.from, 0) : ''
  const until = filter.to ? startOfDay(filter.to, 1) : ''
  return (row) =>
    (!filter.job || row.job.id === filter.job) &&
    (!filter.map || row.map.id === filter.map) &&
    (!from || row.at >= from) &&
    (!until || row.at < until) &&
    (!filter.outcome || hasOutcome(row, filter.outcome)) &&
    words.every((word) => row.text.includes(word))
}

export function isToLookAt({ complete, counts }: Pick<Row, 'complete' | 'counts'>): boolean {
  return !complete || outcomes.some((outcome) => outcome !== 'entered' && counts[outcome])
}

function hasOutcome(row: Row, outcome: NonNullable<Filter['outcome']>): boolean {
  return outcome === 'to look at' ? isToLookAt(row) : (row.counts[outcome] ?? 0) > 0
}

function startOfDay(iso: string, daysLater: number): string {
  const [year, month, day] = iso.split('-').map(Number)
  const date = new Date(year ?? 0, (month ?? 1) - 1, (day ?? 1) + daysLater)
  return Number.isNaN(date.getTime()) ? '' : date.toISOString()
}
