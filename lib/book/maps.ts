import { formMapSchema, type FormMap } from '../form/schema.ts'
import { check } from './check.ts'
import { database } from './database.ts'
import { BookError } from './error.ts'
import { copy } from './journal/copies.ts'
import { announce } from './notice.ts'
import { fromOffice, office, ownId } from './office.ts'
import { buried, bury, unbury } from './tombstones.ts'
import { say } from '../words/say.ts'

/** A kept version of a form map that is not as it should be: it stays where it is and is never used. */
export interface DamagedMap {
  id: string
  name: string
  version: number
  /** What is wrong in it: the path to the first field. */
  path: string
}

/** All versions that are kept, those that can be used apart from those that are damaged; in the order of their keys. */
async function allVersions(range?: IDBKeyRange): Promise<{ sound: FormMap[]; damaged: DamagedMap[] }> {
  const sound: FormMap[] = []
  const damaged: DamagedMap[] = []
  for (const kept of await (await database()).getAll('maps', range)) {
    const read = formMapSchema.safeParse(kept)
    if (read.success) sound.push(read.data)
    else {
      const { id, name, version } = kept
      damaged.push({ id, name: String(name), version, path: read.error.issues[0]?.path.join('.') ?? '' })
    }
  }
  return { sound, damaged }
}

/**
 * The newest version of every form map that is not deleted, and those from the office, by name. What is damaged is left
 * out (`damagedMaps` names it), and the version before it stands in its place.
 */
export async function listMaps(): Promise<FormMap[]> {
  const [{ sound }, gone, { maps }] = await Promise.all([allVersions(), buried('map'), office()])
  // Keys are [id, version], so the last of an id is its newest.
  const newest = new Map(sound.map((map) => [map.id, map]))
  const own = [...newest.values()].filter(({ id }) => !gone.has(id) && !fromOffice(id))
  return [...own, ...maps].toSorted((a, b) => a.name.localeCompare(b.name))
}

/** Versions of form maps that are kept and cannot be used. */
export async function damagedMaps(): Promise<DamagedMap[]> {
  return (await allVersions()).damaged
}

/** Every version of a form map, the newest first; also of a deleted one. */
export async function mapVersions(id: string): Promise<FormMap[]> {
  const { sound } = await allVersions(IDBKeyRange.bound([id, 0], [id, Infinity]))
  return sound.toReversed()
}

/**
 * Keeps a form map as its next version; earlier versions stay. What is kept has the version number and the times that
 * the book gave it. A map that equals its newest version is not kept twice. One from the office becomes the person's own.
 * @throws BookError when the map does not fit its schema.
 */
export async function saveMap(given: FormMap): Promise<FormMap> {
  const map = { ...given, id: ownId(given.id) }
  const checked = check(formMapSchema, map, say`The form map`)
  const tx = (await database()).transaction(['maps', 'tombstones'], 'readwrite', { durability: 'strict' })
  const maps = tx.objectStore('maps')
  const newest = (await maps.openCursor(IDBKeyRange.bound([map.id, 0], [map.id, Infinity]), 'prev'))?.value
  const deleted = await tx.objectStore('tombstones').get(['map', map.id])
  if (newest && !deleted && sameContent(newest, checked)) {
    await tx.done
    return newest
  }
  const now = new Date().toISOString()
  const kept = { ...checked, version: (newest?.version ?? 0) + 1, created: newest?.created ?? now, updated: now }
  await Promise.all([maps.put(kept), tx.objectStore('tombstones').delete(['map', map.id]), tx.done])
  await Promise.all([copy('maps', [kept.id, kept.version], kept), copy('tombstones', ['map', map.id])])
  announce({ what: 'maps', id: map.id })
  return kept
}

function sameContent(a: FormMap, b: FormMap): boolean {
  return content(a) === content(b)
}

function content({ name, address, further = [], bindings }: FormMap): string {
  return JSON.stringify([name, address, further, bindings])
}

/** Hides a form map; its versions stay, and `restoreMap` brings it back. */
export async function deleteMap(id: string): Promise<void> {
  refuseOffice(id)
  await bury('map', id)
  announce({ what: 'maps', id })
}

function refuseOffice(id: string): void {
  if (!fromOffice(id)) return
  const message = say`This form map comes from your office and stays. Whoever looks after this browser can take it out.`
  throw new BookError([{ code: 'conflict', path: 'id', message }])
}

export async function restoreMap(id: string): Promise<void> {
  await unbury('map', id)
  announce({ what: 'maps', id })
}
