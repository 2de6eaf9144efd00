import { keptLimitSchema, type KeptLimit } from '../job/schema.ts'
import { check } from './check.ts'
import { database } from './database.ts'
import { copy } from './journal/copies.ts'
import { announce } from './notice.ts'
import { fromOffice, office, ownId } from './office.ts'
import { allSound } from './sound.ts'
import { buried, bury, unbury } from './tombstones.ts'
import { say } from '../words/say.ts'

/** Limits of the owner's own that are not deleted, and those from the office, by name. */
export async function listLimits(): Promise<KeptLimit[]> {
  const [limits, gone, set] = await Promise.all([(await database()).getAll('limits'), buried('limit'), office()])
  const own = allSound(keptLimitSchema, limits).filter(({ id }) => !gone.has(id) && !fromOffice(id))
  return [...own, ...set.limits].toSorted((a, b) => a.name.localeCompare(b.name))
}

/**
 * Keeps a limit; one from the office becomes the person's own.
 * @throws BookError when the limit does not fit its schema.
 */
export async function saveLimit(limit: KeptLimit): Promise<KeptLimit> {
  const kept = check(keptLimitSchema, { ...limit, id: ownId(limit.id) }, say`The limit`)
  await (await database()).put('limits', kept)
  await copy('limits', kept.id, kept)
  announce({ what: 'limits', id: kept.id })
  return kept
}

export async function deleteLimit(id: string): Promise<void> {
  await bury('limit', id)
  announce({ what: 'limits', id })
}

export async function restoreLimit(id: string): Promise<void> {
  await unbury('limit', id)
  announce({ what: 'limits', id })
}
