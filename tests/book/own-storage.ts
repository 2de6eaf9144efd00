/** The extension's own storage, in memory. To be imported before anything that imports lib/browser.ts. */
const kept = new Map<string, unknown>()

export const ownStorage = {
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
}

Object.assign(globalThis, { chrome: { storage: { local: ownStorage } } })
