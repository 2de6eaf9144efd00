/** The extension's own storage, in memory. To be imported before anything that imports lib/browser.ts. */
const storage = (kept = new Map<string, unknown>()) => ({
  async get(name: string | null): Promise<Record<string, unknown>> {
    const all = Object.fromEntries(kept)
    return name === null ? all : name in all ? { [name]: all[name] } : {}
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

/** What is kept for one run of the browser. */
export const runStorage = storage()

Object.assign(globalThis, { chrome: { storage: { local: ownStorage } } })

/** Lets the extension know runs of the browser: without this it keeps nothing for one. */
export function knowRuns(): void {
  const { chrome } = globalThis as unknown as { chrome: { storage: object } }
  Object.assign(chrome.storage, { session: runStorage })
}
