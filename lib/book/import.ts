/**
 * Taking in a book file: first what would change, then what is not here yet. What is here with other content is replaced
 * only where the person takes the file's; entries never are.
 */
import { canonical } from './canonical.ts'
import type { FormMap } from '../form/schema.ts'
import { deviceSchema, jobSchema, keptLimitSchema, type Device, type Job, type KeptLimit } from '../job/schema.ts'
import { keepBlob } from './attachments.ts'
import { fromBase64 } from './base64.ts'
import { database, type Tombstone } from './database.ts'
import {
  sameContent,
  takeTheirs,
  differing,
  type Differing,
  type DifferingDevice,
  type DifferingLimit,
  type DifferingMap,
} from './differing.ts'
import { addSealed, countEntries, doNotFollow, readyToAdd } from './entries.ts'
import { EntryPlanner, type EntriesPlanned, type Joining } from './import-entries.ts'
import { BesideInFile, BesideWriter, ChainInFile, type Beside, type OtherPlanned } from './import-others.ts'
import { addApart } from './journal/give-back.ts'
import { compareNow } from './journal/compare.ts'
import { blockOf } from './indexing.ts'
import type { BookItem, BookSource } from './json.ts'
import { mapVersions } from './maps.ts'
import { origins } from './origin.ts'
import { announce } from './notice.ts'
import { addAfter, outlines } from './reading.ts'
import type { Entry, Settings } from './schema.ts'
import { asideOf, sound } from './sound.ts'

/**
 * `add`: not in the book yet. `same`: how many are there already. `kept`: the book has another content, which stays unless
 * the person takes the file's.
 */
type Change<T, K = T> = { add: T[]; same: number; kept: K[] }

export type ImportPlan = {
  jobs: Change<Job>
  devices: Change<Device, DifferingDevice>
  /** `next`: form maps whose newest version in the file is not the book's: can become the next version. */
  maps: Change<FormMap> & { next: DifferingMap[] }
  limits: Change<KeptLimit, DifferingLimit>
  entries: EntriesPlanned
  joining: Joining
  /** Books that can be kept beside this one, and entries of such books that the file does not name. */
  others: OtherPlanned[]
  nameless: number
  /** Attachments by their hash. `missing`: names of those that entries of the file speak of and that are nowhere. */
  blobs: { add: string[]; same: number; missing: string[] }
  deleted: Tombstone[]
  /** Only when the book has none of its own. */
  settings: Settings | undefined
  /** Lines of the file that are not as they were written and were passed over. */
  damaged: number
}

/**
 * Says what taking in a file would change; changes nothing. The file is read once.
 * @param onRead how much of the file was read, from 0 to 1
 * @throws BookError when anything in the file is not as it was written, unless the source passes over that.
 */
export async function planImport(source: BookSource, onRead?: (share: number) => void): Promise<ImportPlan> {
  const db = await database()
  const found = await gather(source, onRead)
  const [jobs, devices, maps, limits, own] = await Promise.all([
    compare(found.jobs, async ({ id }) => sound(jobSchema, await db.get('jobs', id))),
    compare(found.devices, async ({ id }) => sound(deviceSchema, await db.get('devices', id))),
    compare(found.maps, ({ id, version }) => db.get('maps', [id, version])),
    compare(found.limits, async ({ id }) => sound(keptLimitSchema, await db.get('limits', id))),
    db.get('single', 'settings'),
  ])
  const there = new Set(await db.getAllKeys('blobs'))
  const conflicting = new Set(maps.kept.map(({ theirs }) => theirs.id))
  const next = await nextVersions([...conflicting].map((id) => newestOf(found.maps.filter((map) => map.id === id))))
  const added = new Set([...jobs.add, ...devices.add, ...maps.add, ...limits.add].map(({ id }) => id))
  return {
    jobs: theirsOf(jobs),
    devices: { ...devices, kept: await differing('device', devices.kept) },
    maps: { ...theirsOf(maps), add: maps.add.filter(({ id }) => !conflicting.has(id)), next },
    limits: { ...limits, kept: await differing('limit', limits.kept) },
    entries: found.entries,
    joining: found.joining,
    others: found.others,
    nameless: found.nameless,
    blobs: {
      add: found.blobs.filter((hash) => !there.has(hash)),
      same: found.blobs.filter((hash) => there.has(hash)).length,
      missing: missingOf(found.files, new Set([...there, ...found.blobs])),
    },
    deleted: found.deleted.filter(({ id }) => added.has(id)),
    settings: own === undefined ? found.settings : undefined,
    damaged: source.damage?.count ?? 0,
  }
}

/** Everything but entries and the bytes of attachments, which stay in the file. */
async function gather(source: BookSource, onRead?: (share: number) => void) {
  const chain = new ChainInFile()
  const planner = await EntryPlanner.begin(source.damage !== undefined, chain)
  const beside = new BesideInFile()
  const jobs: Job[] = []
  const devices: Device[] = []
  const maps: FormMap[] = []
  const limits: KeptLimit[] = []
  const deleted: Tombstone[] = []
  const blobs: string[] = []
  /** Of entries about attachments: their names, by hash. */
  const files = new Map<string, string>()
  let settings: Settings | undefined
  for await (const one of outlines(source, onRead)) {
    const { kind, value } = one
    if (one.kind === 'entry') {
      const { file } = one.value
      await planner.take(one.value, one.seal)
      if (file) files.set(file.sha256, file.name)
    } else if (one.kind === 'beside') {
      const { book, entry } = one.value
      await beside.take(book, entry, one.seal)
      if (entry.file) files.set(entry.file.sha256, entry.file.name)
    } else if (kind === 'book') beside.book(value)
    else if (kind === 'job') jobs.push(value)
    else if (kind === 'device') devices.push(value)
    else if (kind === 'map') maps.push(value)
    else if (kind === 'limit') limits.push(value)
    else if (kind === 'deleted') deleted.push(value)
    else if (kind === 'blob') blobs.push(value.sha256)
    else if (kind === 'settings') settings = value
  }
  const { entries, joining } = await planner.end()
  const own = await ownAsOther(entries, joining, chain)
  const others = [...(own ? [own] : []), ...(await beside.end())]
  return {
    jobs,
    devices,
    maps,
    limits,
    deleted,
    blobs,
    files,
    settings,
    entries,
    joining,
    others,
    nameless: beside.nameless,
  }
}

/** The file's own entries as a book beside: where they cannot be joined to this one, or could also begin it. */
async function ownAsOther(
  { add, same, refused }: EntriesPlanned,
  { after, gaps }: Joining,
  chain: ChainInFile,
): Promise<OtherPlanned | undefined> {
  const canBegin = after === 0 && add > 0 && same === 0 && gaps.length === 0 && !refused
  if (!refused && !canBegin) return undefined
  const planned = await chain.end(undefined)
  return planned && { ...planned, canBegin }
}

/** Names of attachments whose bytes are neither in the file nor here. */
const missingOf = (files: ReadonlyMap<string, string>, found: ReadonlySet<string>): string[] =>
  [...files].flatMap(([hash, name]) => (found.has(hash) ? [] : name))

async function* entriesIn(source: BookSource): AsyncGenerator<Entry> {
  for await (const item of source.items()) if (isEntry(item)) yield item.value
}

const isEntry = (item: BookItem): item is Extract<BookItem, { kind: 'entry' }> => item.kind === 'entry'

async function compare<T>(
  items: T[],
  find: (item: T) => Promise<T | undefined>,
): Promise<Change<T, { yours: T; theirs: T }>> {
  const change: Change<T, { yours: T; theirs: T }> = { add: [], same: 0, kept: [] }
  for (const item of items) {
    const own = await find(item)
    if (!own) change.add.push(item)
    else if (canonical(own) === canonical(item)) change.same += 1
    else change.kept.push({ yours: own, theirs: item })
  }
  return change
}

function newestOf(versions: FormMap[]): FormMap {
  return versions.reduce((newest, map) => (map.version > newest.version ? map : newest))
}

const theirsOf = <T>({ kept, ...rest }: Change<T, { theirs: T }>): Change<T> => ({
  ...rest,
  kept: kept.map(({ theirs }) => theirs),
})

/** Beside the newest version that is here, those of the file that say something else. */
async function nextVersions(maps: readonly FormMap[]): Promise<DifferingMap[]> {
  const all: Pick<DifferingMap, 'yours' | 'theirs'>[] = []
  for (const theirs of maps) {
    const [yours] = await mapVersions(theirs.id)
    // Where no version that is here can be read, there is none to compare with.
    all.push({ yours: yours ?? { ...theirs, bindings: [] }, theirs })
  }
  return (await differing('map', all)).filter(({ yours, theirs, gone }) => gone || !sameContent(yours, theirs))
}

/** What is taken from the file unless the person says otherwise: a form map's version, for yours stays below it. */
export const usuallyTaken = ({ maps }: Pick<ImportPlan, 'maps'>): Differing[] => maps.next

/**
 * Adds what the plan says. `file`: its name, kept with the entries that come from it. `onAdded`: how many entries are in.
 * `beside`: the books that are kept beside this one; left out: all that can be, by the names that they have. Entries that
 * could begin this book and are among them are not added to it. `taken`: of what differs, what takes the place of yours.
 * @throws DOMException (ConstraintError) when the book has changed since the plan; nothing is overwritten then.
 * @throws BookError when the book has got an entry since; then the file's are left out.
 */
export async function applyImport(
  plan: ImportPlan,
  source: BookSource,
  file = '',
  onAdded?: (entries: number) => void,
  beside: readonly Beside[] = usually(plan),
  taken: readonly Differing[] = usuallyTaken(plan),
): Promise<void> {
  await takeTheirs(taken)
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
  try {
    await addAll(plan, source, file, beside, onAdded)
  } finally {
    // What was added before it was stopped stays.
    for (const what of ['jobs', 'devices', 'maps', 'limits', 'settings', 'entries'] as const) announce({ what })
  }
}

async function addAll(
  plan: ImportPlan,
  source: BookSource,
  file: string,
  beside: readonly Beside[],
  onAdded?: (entries: number) => void,
): Promise<void> {
  // Bytes before the entries that name them: one that is cut off then leaves no entry without its attachment.
  await addBlobs(new Set(plan.blobs.add), source)
  const instead = beside.some(({ planned }) => planned.of === '')
  if (plan.entries.add > 0 && !instead) await addEntries(source, plan.joining, file, onAdded)
  await addBeside(source, beside, file, onAdded)
  await compareNow()
}

/** What is kept beside unless the person says otherwise. */
export const usually = ({ others }: Pick<ImportPlan, 'others'>): Beside[] =>
  others.flatMap((planned) => (isUsual(planned) ? { planned, name: planned.name } : []))

export const isUsual = ({ refused, differs, canBegin, add }: OtherPlanned): boolean =>
  !refused && !differs && !canBegin && add > 0

/** One reading of the file for each book, so that one after the other is whole. */
async function addBeside(
  source: BookSource,
  beside: readonly Beside[],
  file: string,
  onAdded?: (entries: number) => void,
): Promise<void> {
  const at = new Date().toISOString()
  let added = 0
  for (const one of beside) {
    if (one.planned.refused) continue
    const writer = await BesideWriter.begin(one, { file, at }, (entries) => onAdded?.((added += entries)))
    for await (const { kind, value } of source.items()) {
      if (kind === 'entry' && one.planned.of === '') await writer.take(value)
      if (kind === 'beside' && value.book === one.planned.of) await writer.take(value.entry)
    }
    await writer.end()
  }
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

/** Up to which entry this taking in of a file has come. */
async function takenInUpTo(from: { file: string; at: string }): Promise<number> {
  const last = (await origins()).takenIn.at(-1)
  return last?.at === from.at && last.file === from.file ? last.to : 0
}

/** Adds what the plan found missing; what was added to the book since is not among them. */
async function addEntries(source: BookSource, plan: Joining, file: string, onAdded?: (entries: number) => void) {
  const from = { file, at: new Date().toISOString() }
  const holes = new Set(plan.holes)
  await readyToAdd()
  const done = await addAfter(
    plan.gaps.length + holes.size > 0 ? { ...source, posted: undefined } : source,
    plan.after,
    from,
    onAdded,
  )
  if (done.all) return
  let some: Entry[] = []
  let { added } = done
  let writing = Promise.resolve()
  const write = async (batch: readonly Entry[], first: Entry) => {
    let here = 0
    if (first.number > plan.after) {
      const newest = await countEntries()
      // A worker that ended by itself may have added what it could no longer tell.
      if (newest >= first.number) here = await takenInUpTo(from)
      if (newest >= first.number && newest > here) throw doNotFollow(newest)
    }
    const rest = batch.filter(({ number }) => number > here)
    // Those that stand apart were held to their own seals and to their neighbours by the plan.
    if (plan.gaps.length > 0 || first.number <= plan.after) await addApart(rest, from)
    else await addSealed(rest, from, true)
    added += batch.length
    onAdded?.(added)
  }
  // One batch is written while the next is read.
  const add = async () => {
    const batch = some
    some = []
    await writing
    const [first] = batch
    if (!first) return
    writing = write(batch, first)
    writing.catch(() => undefined)
  }
  try {
    for await (const entry of entriesIn(source)) {
      const { number } = entry
      if (number <= done.upTo && !holes.has(number)) continue
      // Holes before the newest are filled before what follows it is added.
      const isBeyond = number > plan.after && (some[0]?.number ?? number) <= plan.after
      // A batch ends where a block of the index of words ends, which is then written once.
      if (some[0] && (blockOf(number) !== blockOf(some[0].number) || isBeyond)) await add()
      some.push(entry)
    }
    await add()
  } finally {
    // What is being written is in before anything is said of it.
    await writing
  }
}
