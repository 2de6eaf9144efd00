/** The origin private file system, in memory: folders and files, which take their content when they are closed. */

type Content = { bytes: Uint8Array<ArrayBuffer> }

class FakeWritable {
  readonly #of: Content
  readonly #parts: Blob[] = []

  constructor(of: Content) {
    this.#of = of
  }
  async write(data: BlobPart): Promise<void> {
    if (ownFiles.full) throw new DOMException('There is no more room.', 'QuotaExceededError')
    this.#parts.push(new Blob([data]))
  }
  async close(): Promise<void> {
    this.#of.bytes = new Uint8Array(await new Blob(this.#parts).arrayBuffer())
  }
  async abort(): Promise<void> {}
}

const files = new Map<string, Content>()

/** A folder; the journal's files bear their bare names in `ownFiles`, all others the folder's before it. */
const folderAt = (above: string) => ({
  async *keys(): AsyncGenerator<string> {
    const inside = [...files.keys()].filter((name) => (above ? name.startsWith(above) : !name.includes('/')))
    yield* inside.map((name) => name.slice(above.length)).toReversed()
  },
  async getFileHandle(name: string, { create = false } = {}) {
    const path = above + name
    if (create && !files.has(path)) files.set(path, { bytes: new Uint8Array() })
    const content = files.get(path)
    if (!content) throw new DOMException('There is no such file.', 'NotFoundError')
    return {
      getFile: async () => new File([content.bytes], name),
      createWritable: async () => new FakeWritable(content),
    }
  },
  async removeEntry(name: string): Promise<void> {
    files.delete(above + name)
  },
})

export const ownFiles = {
  files,
  full: false,
  clear(): void {
    files.clear()
    this.full = false
  },
}

Object.defineProperty(navigator, 'storage', {
  configurable: true,
  value: {
    getDirectory: async () => ({
      getDirectoryHandle: async (name: string) => folderAt(name === 'journal' ? '' : `${name}/`),
    }),
  },
})
