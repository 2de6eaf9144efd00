/** Fills that belong to one submission: the steps of a form, and what a reload of the page cut in two. */
import { database } from './database.ts'
import type { ReceiptLine } from '../form/schema.ts'
import type { Fill, OpenFill } from './schema.ts'

/** A submission is finished, or begun anew, on another day, in ms. */
const lasting = 24 * 3_600_000

type Past = Pick<Fill, 'id' | 'kind' | 'started' | 'step' | 'series'> & { bindings: string[]; complete: boolean }

/** The bindings that lines are about. What is damaged is passed over without a schema: the popup, which asks, has none. */
const bindingsOf = (lines: readonly (ReceiptLine | undefined)[]) => lines.flatMap((line) => line?.binding ?? [])

/** The fills of a job with a form map, the newest first: those under way, then those of the book. */
async function* past(job: string, map: string): AsyncGenerator<Past> {
  const db = await database()
  const open = (await db.getAll('fills')).filter(
    ({ fill }: Partial<OpenFill>) => fill?.job?.id === job && fill.map?.id === map,
  )
  for (const { fill } of open.toSorted((a, b) => b.touched.localeCompare(a.touched))) {
    const lines = await db.getAll('lines', IDBKeyRange.bound([fill.id, 0], [fill.id, Infinity]))
    yield { ...fill, bindings: bindingsOf(lines.map(({ line }) => line)), complete: false }
  }
  const keys = await db.getAllKeysFromIndex('entries', 'job and map', IDBKeyRange.only([job, map]))
  for (const number of keys.toReversed()) {
    const entry = await db.get('entries', number)
    if (entry && 'lines' in entry) yield { ...entry, bindings: bindingsOf(entry.lines), complete: entry.complete }
  }
}

/** The submission that a fill goes on with: the id of its first fill. A fill of the first step begins a new one. */
export async function seriesFor(fill: Fill): Promise<string | undefined> {
  if (fill.kind === 'undo') return undefined
  for await (const before of past(fill.job.id, fill.map.id)) {
    if (before.id === fill.id || before.kind === 'undo') continue
    if (Date.parse(fill.started) - Date.parse(before.started) > lasting) break
    const later = fill.step !== undefined && before.step !== undefined && fill.step.at > before.step.at
    const torn = !before.complete && fill.step?.at === before.step?.at
    return later || torn ? (before.series ?? before.id) : fill.step && fill.id
  }
  return fill.step && fill.id
}

/** The bindings that the submission under way has filled already; none when the latest one went through its last step. */
export async function filledSoFar(job: string, map: string, now: Date = new Date()): Promise<ReadonlySet<string>> {
  const done = new Set<string>()
  let series: string | undefined
  for await (const before of past(job, map)) {
    if (before.kind === 'undo') continue
    if (now.getTime() - Date.parse(before.started) > lasting) break
    const own = before.series ?? before.id
    if (series === undefined) {
      if (before.complete && (before.step === undefined || before.step.at === before.step.of)) break
      series = own
    }
    if (own !== series) break
    for (const binding of before.bindings) done.add(binding)
  }
  return done
}
