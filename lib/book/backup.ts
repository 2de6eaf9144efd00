/**
 * A book file behind a passphrase: AES-256-GCM (NIST SP 800-38D) under a key from PBKDF2 with SHA-256 (RFC 8018). The
 * first line says how, each further line is a piece in base 64, sealed together with its place and whether it is the
 * last one.
 */
import { canonical } from './canonical.ts'
import * as z from 'zod/mini'
import { fromBase64, toBase64 } from './base64.ts'
import { refuse } from './error.ts'
import { linesOf, type Readable } from './lines.ts'
import { parseJson } from './parse-json.ts'
import { say } from '../words/say.ts'

/** At least 600,000 for PBKDF2 with SHA-256: OWASP Password Storage Cheat Sheet, from memory. */
export const iterations = 600_000

/** What a file may ask for at most: more would keep the machine busy for minutes. */
const mostIterations = 10_000_000

/** Shorter ones are guessed too soon; common practice, no source. */
export const shortestPassphrase = 12

const pieceSize = 1 << 20

const headSchema = z.object({
  format: z.literal('gapsum-backup'),
  version: z.literal(1),
  key: z.object({
    name: z.literal('PBKDF2'),
    hash: z.literal('SHA-256'),
    iterations: z.number().check(z.gte(iterations), z.lte(mostIterations)),
    /** Base 64 of 16 bytes. */
    salt: z.string(),
  }),
  cipher: z.object({ name: z.literal('AES-GCM'), bits: z.literal(256) }),
})
type Head = z.infer<typeof headSchema>

async function keyOf(passphrase: string, { key }: Head): Promise<CryptoKey> {
  const salt = fromBase64(key.salt)
  if (salt?.length !== 16) throw damaged(1)
  const typed = new TextEncoder().encode(passphrase.normalize('NFC'))
  const raw = await crypto.subtle.importKey('raw', typed, 'PBKDF2', false, ['deriveKey'])
  const from = { name: 'PBKDF2', hash: key.hash, iterations: key.iterations, salt }
  return crypto.subtle.deriveKey(from, raw, { name: 'AES-GCM', length: 256 }, false, ['encrypt', 'decrypt'])
}

/** The key is of this file alone, so its place is a nonce that never comes twice; head, place and end are sealed too. */
function sealOf(head: string, piece: number, last: boolean): AesGcmParams {
  const iv = new Uint8Array(12)
  new DataView(iv.buffer).setUint32(8, piece)
  return { name: 'AES-GCM', iv, additionalData: new TextEncoder().encode(`${head}\n${piece}\n${last}`) }
}

/**
 * Encrypts a file piece by piece.
 * @throws BookError when the passphrase is too short.
 */
export async function* encrypted(parts: AsyncIterable<string>, passphrase: string): AsyncGenerator<string> {
  if (passphrase.length < shortestPassphrase) {
    throw refuse(
      'passphrase',
      say`The passphrase has fewer than ${shortestPassphrase} characters. Type a longer one, and keep it where you find it: without it nobody opens the file.`,
    )
  }
  const salt = toBase64(crypto.getRandomValues(new Uint8Array(16)))
  const head: Head = {
    format: 'gapsum-backup',
    version: 1,
    key: { name: 'PBKDF2', hash: 'SHA-256', iterations, salt },
    cipher: { name: 'AES-GCM', bits: 256 },
  }
  const first = canonical(head) ?? ''
  const key = await keyOf(passphrase, head)
  yield `${first}\n`
  let at = 0
  let waiting: Uint8Array<ArrayBuffer> | undefined
  for await (const piece of pieces(parts)) {
    if (waiting) yield `${toBase64(await crypto.subtle.encrypt(sealOf(first, at++, false), key, waiting))}\n`
    waiting = piece
  }
  const rest = waiting ?? new Uint8Array()
  yield `${toBase64(await crypto.subtle.encrypt(sealOf(first, at, true), key, rest))}\n`
}

async function* pieces(parts: AsyncIterable<string>): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const encoder = new TextEncoder()
  let held = new Uint8Array(pieceSize)
  let filled = 0
  for await (const part of parts) {
    let rest = encoder.encode(part)
    while (rest.length > 0) {
      const taken = rest.subarray(0, pieceSize - filled)
      held.set(taken, filled)
      filled += taken.length
      rest = rest.subarray(taken.length)
      if (filled < pieceSize) continue
      yield held
      held = new Uint8Array(pieceSize)
      filled = 0
    }
  }
  if (filled > 0) yield held.subarray(0, filled)
}

/** Whether a file is such a backup. */
export async function isBackup(file: Blob): Promise<boolean> {
  return (await file.slice(0, 200).text()).includes('"format":"gapsum-backup"')
}

/**
 * Opens a backup, to be decrypted while it is read: it is never in memory as a whole.
 * @param passOver a piece that is not as it was written is left out, and a line break stands in its place; else reading
 * ends there with a BookError
 * @throws BookError when the passphrase is another.
 */
export async function openBackup(
  file: Blob,
  passphrase: string,
  { passOver = false }: { passOver?: boolean } = {},
): Promise<Readable> {
  const lines = linesOf(file)
  const { value: firstLine } = await lines.next()
  const first = new TextDecoder().decode(firstLine)
  const key = await keyOf(passphrase, readHead(first))
  await lines.return(undefined)
  // Whether the passphrase opens it is known before anything is read.
  const tried = passOver ? wholePieces(file, first, key) : strictPieces(file, first, key)
  const { done } = await tried.next()
  await tried.return(undefined)
  if (done) throw wrongPassphrase()
  if (!passOver) return openedAgain({ file, first, key })
  return { size: file.size, stream: () => streamOf(wholePieces(file, first, key)) }
}

/** A backup whose passphrase was tried: with its first line and its key any worker can open it. */
export interface Sealed {
  file: Blob
  first: string
  key: CryptoKey
}

export const openedAgain = (sealed: Sealed): Readable => ({
  size: sealed.file.size,
  stream: () => streamOf(strictPieces(sealed.file, sealed.first, sealed.key)),
  sealed,
})

function streamOf(opened: AsyncGenerator<Uint8Array<ArrayBuffer>>): ReadableStream<Uint8Array<ArrayBuffer>> {
  return new ReadableStream({
    async pull(controller) {
      const { done, value } = await opened.next()
      if (done) controller.close()
      else controller.enqueue(value)
    },
    async cancel() {
      await opened.return(undefined)
    },
  })
}

const sealedIn = (line: Uint8Array) => fromBase64(new TextDecoder().decode(line))

async function openPiece(bytes: Uint8Array<ArrayBuffer>, first: string, key: CryptoKey, piece: number, last: boolean) {
  return new Uint8Array(await crypto.subtle.decrypt(sealOf(first, piece, last), key, bytes))
}

async function* strictPieces(file: Blob, first: string, key: CryptoKey): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const lines = linesOf(file)
  await lines.next()
  let piece = 0
  let { value: line } = await lines.next()
  if (line === undefined) throw damaged(2)
  try {
    while (line !== undefined) {
      const following: IteratorResult<Uint8Array<ArrayBuffer>, unknown> = await lines.next()
      const sealed = sealedIn(line)
      if (!sealed) throw damaged(piece + 2)
      const bytes = await openPiece(sealed, first, key, piece, following.done === true).catch(() => undefined)
      if (!bytes) throw piece > 0 ? damaged(piece + 2) : wrongPassphrase()
      yield bytes
      piece++
      line = following.done ? undefined : following.value
    }
  } finally {
    await lines.return(undefined)
  }
}

const lineBreak = new Uint8Array([10])

/** So many pieces may be missing, or lines be too many, before the places of those after them are no longer found. */
const apart = 8

/** The pieces that are as they were written, with a line break for what is missing between them. */
async function* wholePieces(file: Blob, first: string, key: CryptoKey): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  let next = 0
  let line = -1
  for await (const bytes of linesOf(file)) {
    if (++line === 0) continue
    const found = await placed(bytes, first, key, next)
    if (!found) continue
    if (found.piece !== next) yield lineBreak
    yield found.bytes
    next = found.piece + 1
  }
}

async function placed(line: Uint8Array, first: string, key: CryptoKey, next: number) {
  const sealed = sealedIn(line)
  if (!sealed) return undefined
  for (let piece = next; piece < next + apart; piece++)
    for (const last of [false, true]) {
      const read = await openPiece(sealed, first, key, piece, last).catch(() => undefined)
      if (read) return { bytes: read, piece }
    }
  return undefined
}

/**
 * A backup as a whole, decrypted.
 * @throws BookError when the passphrase is another, or the file is not as it was written; then it gives nothing.
 */
export async function decrypted(file: Blob, passphrase: string): Promise<Blob> {
  const { stream } = await openBackup(file, passphrase)
  const parts: Blob[] = []
  for await (const piece of stream() as unknown as AsyncIterable<Uint8Array<ArrayBuffer>>) parts.push(new Blob([piece]))
  return new Blob(parts)
}

const wrongPassphrase = () =>
  refuse(
    'passphrase',
    say`The passphrase does not open this file, or the beginning of the file was changed. Type it again; mind capitals and spaces.`,
  )
function readHead(text: string): Head {
  try {
    const head = headSchema.safeParse(parseJson(text))
    if (head.success && canonical(head.data) === text) return head.data
  } catch {
    // Said below in words.
  }
  throw refuse(
    'line 1',
    say`The first line of the file does not say how it was encrypted in a way that this book knows. Get the file again, or open it with a newer version.`,
  )
}

function damaged(line: number) {
  return refuse(
    `line ${line}`,
    say`Line ${line} of the file is not what was written, or the file was cut off there. Nothing was taken in. Get the file again from where it came from.`,
  )
}
