import { database, type TombstoneKind } from './database.ts'
import { copy } from './journal/copies.ts'

/** Hides what has this id, without losing it. */
export async function bury(kind: TombstoneKind, id: string): Promise<void> {
  const tx = (await database()).transaction('tombstones', 'readwrite', { durability: 'strict' })
  const tombstone = { kind, id, at: new Date().toISOString() }
  await Promise.all([tx.store.put(tombstone), tx.done, copy('tombstones', [kind, id], tombstone)])
}

export async function unbury(kind: TombstoneKind, id: string): Promise<void> {
  await Promise.all([(await database()).delete('tombstones', [kind, id]), copy('tombstones', [kind, id])])
}

/** Ids of what is hidden, with the time it was deleted. */
export async function buried(kind: TombstoneKind): Promise<Map<string, string>> {
  const all = await (await database()).getAll('tombstones', IDBKeyRange.bound([kind, ''], [kind, '\uffff']))
  return new Map(all.map(({ id, at }) => [id, at]))
}
