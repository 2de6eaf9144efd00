/**
 * What a file and the book have under one id with other content: devices, limits and form maps. Yours stays unless the
 * person takes the file's; a form map's becomes its next version. Sealed entries hold what they rest on and stay.
 */
import { canonical } from './canonical.ts'
import { database, type TombstoneKind } from './database.ts'
import { deviceSchema, keptLimitSchema, type Device, type KeptLimit } from '../job/schema.ts'
import type { FormMap } from '../form/schema.ts'
import { saveDevice } from './devices.ts'
import { refuse } from './error.ts'
import { copy } from './journal/copies.ts'
import { saveLimit } from './limits.ts'
import { mapVersions, saveMap } from './maps.ts'
import { announce } from './notice.ts'
import { sound } from './sound.ts'
import { buried, bury } from './tombstones.ts'
import { say } from '../words/say.ts'

/** `gone`: yours was deleted. */
type Of<K extends TombstoneKind, T> = { kind: K; yours: T; theirs: T; gone?: boolean }
export type DifferingDevice = Of<'device', Device>
export type DifferingLimit = Of<'limit', KeptLimit>
export type DifferingMap = Of<'map', FormMap>
export type Differing = DifferingDevice | DifferingLimit | DifferingMap

const tables = { device: 'devices', limit: 'limits' } as const

/** Whether two contents are the same, apart from what the book itself gives a form map. */
export function sameContent(one: object, other: object): boolean {
  return canonical(bare(one)) === canonical(bare(other))
}

function bare(value: object): object {
  const { version: _, created: __, updated: ___, ...rest } = value as Partial<FormMap>
  return rest
}

/** Says of each what kind it is, and whether yours was deleted. */
export async function differing<K extends Differing['kind'], T extends { id: string }>(
  kind: K,
  all: readonly { yours: T; theirs: T }[],
): Promise<Of<K, T>[]> {
  const gone = await buried(kind)
  return all.map(({ yours, theirs }) => ({ kind, yours, theirs, ...(gone.has(yours.id) && { gone: true }) }))
}

const changedSince = (name: string) =>
  refuse(
    'changed',
    say`${name} was changed here since the file was looked at. Nothing was taken in. Choose the file again to compare the two.`,
  )

/**
 * Puts devices and limits of a file in the place of yours, all of them or none.
 * @throws BookError when one of them is no longer as the plan saw it.
 */
export async function takeTheirs(all: readonly Differing[]): Promise<void> {
  const typed = all.filter((one) => one.kind !== 'map')
  if (typed.length > 0) {
    const tx = (await database()).transaction(['devices', 'limits', 'tombstones'], 'readwrite', {
      durability: 'strict',
    })
    const there = await Promise.all(
      typed.map(({ kind, yours }) =>
        kind === 'device'
          ? tx
              .objectStore('devices')
              .get(yours.id)
              .then((kept) => sound(deviceSchema, kept))
          : tx
              .objectStore('limits')
              .get(yours.id)
              .then((kept) => sound(keptLimitSchema, kept)),
      ),
    )
    const changed = typed.find(({ yours }, at) => canonical(there[at]) !== canonical(yours))
    if (changed) {
      await tx.done
      throw changedSince(changed.yours.name)
    }
    await Promise.all([
      ...typed.map((one) =>
        one.kind === 'device' ? tx.objectStore('devices').put(one.theirs) : tx.objectStore('limits').put(one.theirs),
      ),
      ...typed.map(({ kind, yours }) => tx.objectStore('tombstones').delete([kind, yours.id])),
      tx.done,
    ])
    for (const { kind, theirs } of typed) {
      await Promise.all([copy(tables[kind], theirs.id, theirs), copy('tombstones', [kind, theirs.id])])
      announce({ what: tables[kind], id: theirs.id })
    }
  }
  for (const one of all) if (one.kind === 'map') await saveMap(one.theirs)
}

/**
 * Puts back what `takeTheirs` replaced; of a form map yours becomes its next version.
 * @throws BookError when something was changed since; then nothing is put back.
 */
export async function putBack(all: readonly Differing[]): Promise<void> {
  const db = await database()
  for (const { kind, theirs } of all) {
    const now = kind === 'map' ? (await mapVersions(theirs.id))[0] : await db.get(tables[kind], theirs.id)
    if (now && sameContent(now, theirs)) continue
    throw refuse(
      'changed',
      say`${theirs.name} was changed since the file was taken in. It stays as it is now, and nothing was put back.`,
    )
  }
  for (const { kind, yours, gone } of all) {
    if (kind === 'device') await saveDevice(yours)
    else if (kind === 'limit') await saveLimit(yours)
    else await saveMap(yours)
    if (!gone) continue
    await bury(kind, yours.id)
    announce({ what: kind === 'map' ? 'maps' : tables[kind], id: yours.id })
  }
}
