/** Whether the browser may clear the book when the disk runs full. */
export type Persistence = 'kept' | 'may be cleared' | 'not known'

export async function persistence(): Promise<Persistence> {
  if (!navigator.storage?.persisted) return 'not known'
  return (await navigator.storage.persisted()) ? 'kept' : 'may be cleared'
}

/** Asks the browser to keep the book; a browser may ask the person, grant it or refuse it silently. */
export async function askPersistence(): Promise<Persistence> {
  if (!navigator.storage?.persist) return 'not known'
  return (await navigator.storage.persist()) ? 'kept' : 'may be cleared'
}

/** Bytes in use and bytes allowed, as the browser estimates them. */
export async function storageUse(): Promise<{ used: number; allowed: number } | undefined> {
  const estimate = await navigator.storage?.estimate?.()
  return estimate && { used: estimate.usage ?? 0, allowed: estimate.quota ?? 0 }
}
