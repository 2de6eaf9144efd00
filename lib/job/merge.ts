/** Two versions of a job that grew from one: what either changed is kept, and what both changed is named. */
import type { Job } from './schema.ts'

/** A cell that both versions changed, each in its own way. */
export interface Clash {
  /** Keys from the job down to the cell. */
  path: (string | number)[]
  mine: unknown
  theirs: unknown
}

type Fields = Record<string, unknown>

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
const isNamed = (value: unknown): value is Fields & { id: string } => isFields(value) && typeof value['id'] === 'string'

function equal(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true
  if (Array.isArray(one) && Array.isArray(other)) {
    return one.length === other.length && one.every((value, at) => equal(value, other[at]))
  }
  if (!isFields(one) || !isFields(other)) return false
  return [...new Set([...Object.keys(one), ...Object.keys(other)])].every((key) => equal(one[key], other[key]))
}

/** The one with an id. */
const of = (list: { id: string }[], id: string) => list.find((one) => one.id === id)

/** What lies in neither version any more is dropped, with its key. */
const present = (fields: Fields): Fields =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined))

class Merger {
  readonly clashes: Clash[] = []

  any(base: unknown, mine: unknown, theirs: unknown, path: Clash['path']): unknown {
    if (equal(mine, theirs) || equal(base, theirs)) return mine
    if (equal(base, mine)) return theirs
    if (isFields(mine) && isFields(theirs)) return this.fields(isFields(base) ? base : {}, mine, theirs, path)
    if (Array.isArray(mine) && Array.isArray(theirs)) {
      const old = Array.isArray(base) ? base : []
      if ([...old, ...mine, ...theirs].every(isNamed)) return this.named(old, mine, theirs, path)
      if (mine.length >= old.length && theirs.length >= old.length) return this.rows(old, mine, theirs, path)
    }
    // One version dropped what the other changed: what was typed stays.
    if (mine === undefined) return theirs
    if (theirs === undefined) return mine
    this.clashes.push({ path, mine, theirs })
    return mine
  }

  private fields(base: Fields, mine: Fields, theirs: Fields, path: Clash['path']): Fields {
    const keys = new Set([...Object.keys(mine), ...Object.keys(theirs)])
    return present(
      Object.fromEntries([...keys].map((key) => [key, this.any(base[key], mine[key], theirs[key], [...path, key])])),
    )
  }

  /** Rows are known by their place; rows that either version added stand one after the other. */
  private rows(base: unknown[], mine: unknown[], theirs: unknown[], path: Clash['path']): unknown[] {
    const merged = base.map((old, at) => this.any(old, mine[at], theirs[at], [...path, at]))
    return [...merged, ...mine.slice(base.length), ...theirs.slice(base.length)]
  }

  private named(
    base: { id: string }[],
    mine: { id: string }[],
    theirs: { id: string }[],
    path: Clash['path'],
  ): unknown[] {
    const ids = [...new Set([...mine, ...theirs].map(({ id }) => id))]
    return ids.flatMap((id) => {
      const merged = this.any(of(base, id), of(mine, id), of(theirs, id), [...path, id])
      return merged === undefined ? [] : [merged]
    })
  }
}

/**
 * One job of two that were typed in at the same time. A cell that only one of them changed is taken from it; rows and
 * tests that either added are all there; of a cell that both changed, mine stands and the clash is told.
 *
 * @param base what both started from
 */
export function mergeJobs(base: Job, mine: Job, theirs: Job): { job: Job; clashes: Clash[] } {
  const merger = new Merger()
  const { updated } = theirs
  const job = merger.any({ ...base, updated }, { ...mine, updated }, theirs, []) as Job
  return { job, clashes: merger.clashes }
}

/** The job with each clash decided for the other side. */
export function takeTheirs(job: Job, clashes: readonly Clash[]): Job {
  return clashes.reduce((now, { path, theirs }) => set(now, path, theirs) as Job, job)
}

function set(value: unknown, [key, ...rest]: Clash['path'], to: unknown): unknown {
  if (key === undefined) return to
  if (Array.isArray(value)) {
    const at = typeof key === 'number' ? key : value.findIndex((one) => isNamed(one) && one.id === key)
    return at < 0 || at >= value.length ? value : value.with(at, set(value[at], rest, to))
  }
  return isFields(value) ? present({ ...value, [key]: set(value[key], rest, to) }) : value
}
