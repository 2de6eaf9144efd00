/** The extension's own storage, in memory. To be imported before anything that imports lib/browser.ts. */
const storage = (kept = new Map<string, unknown>()) => ({
  async get(names: string | readonly string[] | null): Promise<Record<string, unknown>> {
    const asked = names === null ? [...kept.keys()] : [names].flat()
    return Object.fromEntries(asked.flatMap((name) => (kept.has(name) ? [[name, kept.get(name)]] : [])))
  },
  async set(values: Record<string, unknown>): Promise<void> {
    for (const [name, value] of Object.entries(values)) kept.set(name, structuredClone(value))
  },
  async remove(name: string): Promise<void> {
    kept.delete(name)
  },
  clear: () => kept.clear(),
  names: () => [...kept.keys()],
})

export const ownStorage = storage()

/** Takes away the newest entries that stand beside the head, so that the second copy alone has them. */
export async function loseTail(): Promise<void> {
  for (const name of ownStorage.names()) if (name.startsWith('book tail ')) await ownStorage.remove(name)
}

/** What is kept for one run of the browser. */
export const runStorage = storage()

Object.assign(globalThis, { chrome: { storage: { local: ownStorage } } })

/** Lets the extension know runs of the browser: without this it keeps nothing for one. */
export function knowRuns(): void {
  const { chrome } = globalThis as unknown as { chrome: { storage: object } }
  Object.assign(chrome.storage, { session: runStorage })
}
