import { downloadBlob } from '../parts/download-blob.ts'

/** Hands a file to the person. */
export async function download(name: string, type: string, parts: AsyncIterable<string>): Promise<void> {
  const blobs: Blob[] = []
  let texts: string[] = []
  let held = 0
  for await (const part of parts) {
    texts.push(part)
    held += part.length
    // Texts are merged now and then, so that a long book does not stay in memory as texts.
    if (held > 4_000_000) {
      blobs.push(new Blob(texts))
      texts = []
      held = 0
    }
  }
  downloadBlob(name, new Blob([...blobs, ...texts], { type }))
}

export const csvType = 'text/csv;charset=utf-8'
export const jsonType = 'application/json'
