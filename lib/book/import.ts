/** Taking in a book file: first what would change, then only additions. Nothing in the book is ever overwritten. */
import canonicalize from 'canonicalize'
import type { FormMap } from '../form/schema.ts'
import type { Device, Job } from '../job/schema.ts'
import { verifyChain } from './chain.ts'
import { database } from './database.ts'
import { addSealed, countEntries, getEntry, getHead } from './entries.ts'
import type { BookFile } from './json.ts'
import { saveMap } from './maps.ts'
import { announce } from './notice.ts'
import type { Entry } from './schema.ts'

/** `add`: not in the book yet. `same`: how many are there already. `kept`: the book has another content, which stays. */
type Change<T> = { add: T[]; same: number; kept: T[] }

export type ImportPlan = {
  jobs: Change<Job>
  devices: Change<Device>
  /** `next`: newest version of a form map that the book has with other content: becomes its next version. */
  maps: Change<FormMap> & { next: FormMap[] }
  /** `refused`: why the entries cannot be joined to the book's chain; then none is added. */
  entries: { add: Entry[]; same: number; refused: string }
  deleted: BookFile['deleted']
}

/** Says what taking in a file would change; changes nothing. */
export async function planImport(file: BookFile): Promise<ImportPlan> {
  const db = await database()
  const [jobs, devices, maps, entries] = await Promise.all([
    compare(file.jobs, ({ id }) => db.get('jobs', id)),
    compare(file.devices, ({ id }) => db.get('devices', id)),
    compare(file.maps, ({ id, version }) => db.get('maps', [id, version])),
    planEntries(file.entries),
  ])
  const conflicting = new Set(maps.kept.map(({ id }) => id))
  const next = [...conflicting].map((id) => newestOf(file.maps.filter((map) => map.id === id)))
  const added = new Set([...jobs.add, ...devices.add, ...maps.add].map(({ id }) => id))
  return {
    jobs,
    devices,
    maps: { ...maps, add: maps.add.filter(({ id }) => !conflicting.has(id)), next },
    entries,
    deleted: file.deleted.filter(({ id }) => added.has(id)),
  }
}

async function compare<T>(items: T[], find: (item: T) => Promise<T | undefined>): Promise<Change<T>> {
  const change: Change<T> = { add: [], same: 0, kept: [] }
  for (const item of items) {
    const own = await find(item)
    if (!own) change.add.push(item)
    else if (canonicalize(own) === canonicalize(item)) change.same += 1
    else change.kept.push(item)
  }
  return change
}

function newestOf(versions: FormMap[]): FormMap {
  return versions.reduce((newest, map) => (map.version > newest.version ? map : newest))
}

async function planEntries(entries: Entry[]): Promise<ImportPlan['entries']> {
  const sorted = entries.toSorted((a, b) => a.number - b.number)
  const count = await countEntries()
  const known = sorted.filter(({ number }) => number <= count)
  for (const entry of known) {
    const own = await getEntry(entry.number)
    if (own?.hash === entry.hash) continue
    return refuse(
      `The file's entry ${entry.number} is not this book's entry ${entry.number}: they are two books. The entries stay in the file; the rest can be taken in.`,
    )
  }
  const add = sorted.slice(known.length)
  const verdict = await verifyChain(add, { after: await getHead() })
  if (verdict.ok) return { add, same: known.length, refused: '' }
  return refuse(
    `${verdict.message} So the entries of this file cannot ${count === 0 ? 'begin this book' : `follow entry ${count} of this book`}; the rest can be taken in.`,
  )
}

function refuse(refused: string): ImportPlan['entries'] {
  return { add: [], same: 0, refused }
}

/**
 * Adds what the plan says.
 * @throws DOMException (ConstraintError) when the book has changed since the plan; nothing is overwritten then.
 */
export async function applyImport(plan: ImportPlan): Promise<void> {
  const tx = (await database()).transaction(['jobs', 'devices', 'maps', 'tombstones'], 'readwrite', {
    durability: 'strict',
  })
  await Promise.all([
    ...plan.jobs.add.map((job) => tx.objectStore('jobs').add(job)),
    ...plan.devices.add.map((device) => tx.objectStore('devices').add(device)),
    ...plan.maps.add.map((map) => tx.objectStore('maps').add(map)),
    ...plan.deleted.map((tombstone) => tx.objectStore('tombstones').put(tombstone)),
    tx.done,
  ])
  for (const map of plan.maps.next) await saveMap(map)
  await addSealed(plan.entries.add)
  for (const what of ['jobs', 'devices', 'maps'] as const) announce({ what })
}
