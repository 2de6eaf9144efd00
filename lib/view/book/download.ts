/** Hands a file to the person. */
export async function download(name: string, type: string, parts: AsyncIterable<string>): Promise<void> {
  const blobs: Blob[] = []
  let texts: string[] = []
  for await (const part of parts) {
    texts.push(part)
    // Many small texts are merged now and then, so that a long book does not stay in memory as texts.
    if (texts.length === 1000) {
      blobs.push(new Blob(texts))
      texts = []
    }
  }
  downloadBlob(name, new Blob([...blobs, ...texts], { type }))
}

export function downloadBlob(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob)
  const link = Object.assign(document.createElement('a'), { href: url, download: name })
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}

export const csvType = 'text/csv;charset=utf-8'
export const jsonType = 'application/json'
