import { database, type TombstoneKind } from './database.ts'

/** Hides what has this id, without losing it. */
export async function bury(kind: TombstoneKind, id: string): Promise<void> {
  const tx = (await database()).transaction('tombstones', 'readwrite', { durability: 'strict' })
  await Promise.all([tx.store.put({ kind, id, at: new Date().toISOString() }), tx.done])
}

export async function unbury(kind: TombstoneKind, id: string): Promise<void> {
  await (await database()).delete('tombstones', [kind, id])
}

/** Ids of what is hidden, with the time it was deleted. */
export async function buried(kind: TombstoneKind): Promise<Map<string, string>> {
  const all = await (await database()).getAll('tombstones', IDBKeyRange.bound([kind, ''], [kind, '\uffff']))
  return new Map(all.map(({ id, at }) => [id, at]))
}
