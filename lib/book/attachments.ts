/** Photos and documents. The chain holds their SHA-256; the bytes stand beside it, once for each hash. */
import { bounds } from '../bounds.ts'
import { database } from './database.ts'
import { refuse } from './error.ts'
import { journalBlob } from './journal/keep.ts'
import { addNote } from './notes.ts'
import type { AttachmentEntry, Entry, KeptFile } from './schema.ts'
import { sha256 } from './sha256.ts'
import { say } from '../words/say.ts'

/** A photo of a gauge has a few MB; a long report some more. */
export const largest = bounds.attachment

/** How files of a type begin: a name or ending can say anything. */
const beginnings: readonly (readonly [type: string, at: number, bytes: readonly number[]])[] = [
  ['image/jpeg', 0, [0xff, 0xd8, 0xff]],
  ['image/png', 0, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]],
  ['image/webp', 8, [0x57, 0x45, 0x42, 0x50]],
  ['application/pdf', 0, [0x25, 0x50, 0x44, 0x46, 0x2d]],
]

export const acceptedTypes = beginnings.map(([type]) => type)

/** The type of a file by its first bytes; undefined: none that the book keeps. */
export function typeOf(bytes: ArrayBuffer): string | undefined {
  const head = new Uint8Array(bytes, 0, Math.min(16, bytes.byteLength))
  return beginnings.find(([, at, start]) => start.every((byte, index) => head[at + index] === byte))?.[0]
}

/**
 * Why bytes cannot be an attachment; undefined when they can. Every way into the book asks this.
 * @param name what the file is called
 */
export function whyNotKept(name: string, bytes: ArrayBuffer): string | undefined {
  if (bytes.byteLength > largest)
    return say`${name} is too large: ${Math.ceil(bytes.byteLength / 1e6)} MB, where the book takes 20 MB. Save the photo smaller, or split the document.`
  if (typeOf(bytes)) return undefined
  return say`${name} is not a photo (JPEG, PNG, WebP) or a PDF inside, whatever its name says. Save it as one of these first.`
}

/**
 * The bytes as what they are, whatever a name or a record says of them: a photo, a PDF, or else something that no
 * browser opens as a page.
 */
export const asItIs = (bytes: ArrayBuffer): Blob =>
  new Blob([bytes], { type: typeOf(bytes) ?? 'application/octet-stream' })

/**
 * Attaches a file to an entry, or to a job.
 * @throws BookError when it is too large, empty, or neither a photo nor a PDF.
 */
export async function attach(
  file: { name: string; size: number; arrayBuffer: () => Promise<ArrayBuffer> },
  to: { job: Entry['job']; of?: number | undefined; text: string },
  engine: string,
): Promise<AttachmentEntry> {
  const name = file.name.slice(0, 200)
  if (file.size > largest) {
    throw refuse(
      name,
      say`${name} is too large: ${Math.ceil(file.size / 1e6)} MB, where the book takes 20 MB. Save the photo smaller, or split the document.`,
    )
  }
  const bytes = await file.arrayBuffer()
  const type = typeOf(bytes)
  const why = whyNotKept(name, bytes)
  if (!type || why !== undefined) throw refuse(name, why ?? name)
  const kept: KeptFile = { name, type, size: bytes.byteLength, sha256: await sha256(bytes) }
  await keepBlob(kept, bytes)
  const { job, of, text } = to
  const entry = await addNote({ kind: 'attachment', job, text, file: kept, ...(of !== undefined && { of }) }, engine)
  return entry as AttachmentEntry
}

/** Keeps bytes under their hash; those that are there already are not written again. */
export async function keepBlob({ sha256: hash, type }: Pick<KeptFile, 'sha256' | 'type'>, bytes: ArrayBuffer) {
  const tx = (await database()).transaction('blobs', 'readwrite', { durability: 'strict' })
  if ((await tx.store.getKey(hash)) === undefined) await tx.store.put({ sha256: hash, type, bytes })
  await tx.done
  await journalBlob(hash, type, bytes)
}

/**
 * The bytes of an attachment, checked against the hash in the chain.
 * @throws BookError when they are gone or not what was attached.
 */
export async function bytesOf({ name, sha256: hash }: Pick<KeptFile, 'name' | 'sha256'>): Promise<ArrayBuffer> {
  const blob = await (await database()).get('blobs', hash)
  if (!blob)
    throw refuse(name, say`${name} is not in this book, only its fingerprint. Look for it in an earlier backup.`)
  if ((await sha256(blob.bytes)) === hash) return blob.bytes
  throw refuse(name, say`${name} is not what was attached: its fingerprint is another. Take it from an earlier backup.`)
}
