/** Taking in a book file: first what would change, then only additions. Nothing in the book is ever overwritten. */
import canonicalize from 'canonicalize'
import type { FormMap } from '../form/schema.ts'
import { deviceSchema, jobSchema, keptLimitSchema, type Device, type Job, type KeptLimit } from '../job/schema.ts'
import { keepBlob } from './attachments.ts'
import { fromBase64 } from './base64.ts'
import { verifyChain } from './chain.ts'
import { database, type Tombstone } from './database.ts'
import { addSealed, countEntries, doNotFollow, getHead, keptEntry } from './entries.ts'
import { compareNow } from './journal/compare.ts'
import type { BookItem, BookSource } from './json.ts'
import { saveMap } from './maps.ts'
import { announce } from './notice.ts'
import type { Entry, Settings } from './schema.ts'
import { asideOf, sound } from './sound.ts'
import { say } from '../words/say.ts'

/** `add`: not in the book yet. `same`: how many are there already. `kept`: the book has another content, which stays. */
type Change<T> = { add: T[]; same: number; kept: T[] }

export type ImportPlan = {
  jobs: Change<Job>
  devices: Change<Device>
  /** `next`: newest version of a form map that the book has with other content: becomes its next version. */
  maps: Change<FormMap> & { next: FormMap[] }
  limits: Change<KeptLimit>
  /** How many; `refused`: why the entries cannot be joined to the book's chain; then none is added. */
  entries: { add: number; same: number; refused: string }
  /** Attachments by their hash. `missing`: names of those that entries of the file speak of and that are nowhere. */
  blobs: { add: string[]; same: number; missing: string[] }
  deleted: Tombstone[]
  /** Only when the book has none of its own. */
  settings: Settings | undefined
}

/**
 * Says what taking in a file would change; changes nothing.
 * @throws BookError when anything in the file is not as it was written.
 */
export async function planImport(source: BookSource): Promise<ImportPlan> {
  const db = await database()
  const found = await gather(source)
  const [jobs, devices, maps, limits, entries, own] = await Promise.all([
    compare(found.jobs, async ({ id }) => sound(jobSchema, await db.get('jobs', id))),
    compare(found.devices, async ({ id }) => sound(deviceSchema, await db.get('devices', id))),
    compare(found.maps, ({ id, version }) => db.get('maps', [id, version])),
    compare(found.limits, async ({ id }) => sound(keptLimitSchema, await db.get('limits', id))),
    planEntries(source),
    db.get('single', 'settings'),
  ])
  const there = new Set(await db.getAllKeys('blobs'))
  const conflicting = new Set(maps.kept.map(({ id }) => id))
  const next = [...conflicting].map((id) => newestOf(found.maps.filter((map) => map.id === id)))
  const added = new Set([...jobs.add, ...devices.add, ...maps.add, ...limits.add].map(({ id }) => id))
  return {
    jobs,
    devices,
    maps: { ...maps, add: maps.add.filter(({ id }) => !conflicting.has(id)), next },
    limits,
    entries,
    blobs: {
      add: found.blobs.filter((hash) => !there.has(hash)),
      same: found.blobs.filter((hash) => there.has(hash)).length,
      missing: missingOf(found.files, new Set([...there, ...found.blobs])),
    },
    deleted: found.deleted.filter(({ id }) => added.has(id)),
    settings: own === undefined ? found.settings : undefined,
  }
}

/** Everything but entries and the bytes of attachments, which stay in the file. */
async function gather(source: BookSource) {
  const jobs: Job[] = []
  const devices: Device[] = []
  const maps: FormMap[] = []
  const limits: KeptLimit[] = []
  const deleted: Tombstone[] = []
  const blobs: string[] = []
  /** Of entries about attachments: their names, by hash. */
  const files = new Map<string, string>()
  let settings: Settings | undefined
  for await (const { kind, value } of source.items()) {
    if (kind === 'job') jobs.push(value)
    else if (kind === 'device') devices.push(value)
    else if (kind === 'map') maps.push(value)
    else if (kind === 'limit') limits.push(value)
    else if (kind === 'deleted') deleted.push(value)
    else if (kind === 'blob') blobs.push(value.sha256)
    else if (kind === 'settings') settings = value
    else if (kind === 'entry' && value.kind === 'attachment') files.set(value.file.sha256, value.file.name)
  }
  return { jobs, devices, maps, limits, deleted, blobs, files, settings }
}

/** Names of attachments whose bytes are neither in the file nor here. */
const missingOf = (files: ReadonlyMap<string, string>, found: ReadonlySet<string>): string[] =>
  [...files].flatMap(([hash, name]) => (found.has(hash) ? [] : name))

async function* entriesIn(source: BookSource, after = 0): AsyncGenerator<Entry> {
  for await (const item of source.items()) if (isEntry(item) && item.value.number > after) yield item.value
}

const isEntry = (item: BookItem): item is Extract<BookItem, { kind: 'entry' }> => item.kind === 'entry'

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

async function planEntries(source: BookSource): Promise<ImportPlan['entries']> {
  const count = await countEntries()
  let [same, add] = [0, 0]
  for await (const entry of entriesIn(source)) {
    if (entry.number > count) {
      add++
      continue
    }
    same++
    const own = await keptEntry(entry.number)
    if (own?.hash === entry.hash) continue
    return refuse(
      say`The file's entry ${entry.number} is not this book's entry ${entry.number}: they are two books. The entries stay in the file; the rest can be taken in.`,
    )
  }
  if (add === 0) return { add, same, refused: '' }
  const verdict = await verifyChain(entriesIn(source, count), { after: await getHead() })
  if (verdict.ok) return { add, same, refused: '' }
  return refuse(
    count === 0
      ? say`${verdict.message} So the entries of this file cannot begin this book; the rest can be taken in.`
      : say`${verdict.message} So the entries of this file cannot follow entry ${count} of this book; the rest can be taken in.`,
  )
}

function refuse(refused: string): ImportPlan['entries'] {
  return { add: 0, same: 0, refused }
}

/** So many entries are added at a time. */
const batch = 256

/**
 * Adds what the plan says. `file`: its name, kept with the entries that come from it.
 * @throws DOMException (ConstraintError) when the book has changed since the plan; nothing is overwritten then.
 * @throws BookError when the book has got an entry since; then the file's are left out.
 */
export async function applyImport(plan: ImportPlan, source: BookSource, file = ''): Promise<void> {
  const tx = (await database()).transaction(
    ['jobs', 'devices', 'maps', 'limits', 'tombstones', 'single'],
    'readwrite',
    {
      durability: 'strict',
    },
  )
  await Promise.all([
    ...plan.jobs.add.map((job) => put(tx.objectStore('jobs'), jobSchema, job)),
    ...plan.devices.add.map((device) => put(tx.objectStore('devices'), deviceSchema, device)),
    ...plan.maps.add.map((map) => tx.objectStore('maps').add(map)),
    ...plan.limits.add.map((limit) => put(tx.objectStore('limits'), keptLimitSchema, limit)),
    ...plan.deleted.map((tombstone) => tx.objectStore('tombstones').put(tombstone)),
    ...(plan.settings ? [tx.objectStore('single').add(plan.settings, 'settings')] : []),
    tx.done,
  ])
  for (const map of plan.maps.next) await saveMap(map)
  // Bytes before the entries that name them: one that is cut off then leaves no entry without its attachment.
  await addBlobs(new Set(plan.blobs.add), source)
  if (plan.entries.add > 0) await addEntries(source, plan.entries.same, file)
  await compareNow()
  for (const what of ['jobs', 'devices', 'maps', 'limits', 'settings'] as const) announce({ what })
}

interface Table<T> {
  get: (id: string) => Promise<T | undefined>
  add?: ((value: T) => Promise<unknown>) | undefined
  put?: ((value: T) => Promise<unknown>) | undefined
}

/** Adds one; a damaged one of the same id makes room and is kept beside it. */
async function put<T extends { id: string }>(table: Table<T>, schema: Parameters<typeof sound<T>>[0], value: T) {
  const there = await table.get(value.id)
  if (there && !sound(schema, there)) {
    await table.put?.(asideOf(there, new Date().toISOString()))
    await table.put?.(value)
  } else await table.add?.(value)
}

async function addBlobs(hashes: ReadonlySet<string>, source: BookSource): Promise<void> {
  if (hashes.size === 0) return
  for await (const { kind, value } of source.items()) {
    const bytes = kind === 'blob' && hashes.has(value.sha256) ? fromBase64(value.bytes) : undefined
    if (kind === 'blob' && bytes) await keepBlob(value, bytes.buffer)
  }
}

/** Adds those after the first `same`, which the plan found here; what was added to the book since is not among them. */
async function addEntries(source: BookSource, same: number, file: string): Promise<void> {
  const from = { file, at: new Date().toISOString() }
  let passed = 0
  let some: Entry[] = []
  const add = async () => {
    const newest = await countEntries()
    if (some[0] && newest >= some[0].number) throw doNotFollow(newest)
    await addSealed(some, from)
    some = []
  }
  for await (const entry of entriesIn(source)) {
    if (passed++ < same) continue
    some.push(entry)
    if (some.length === batch) await add()
  }
  await add()
}
