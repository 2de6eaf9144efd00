/**
 * A book file behind a passphrase: AES-256-GCM (NIST SP 800-38D) under a key from PBKDF2 with SHA-256 (RFC 8018). The
 * first line says how, each further line is a piece in base 64, sealed together with its place and whether it is the
 * last one.
 */
import canonicalize from 'canonicalize'
import * as z from 'zod/mini'
import { fromBase64, toBase64 } from './base64.ts'
import { refuse } from './error.ts'
import { linesOf } from './lines.ts'
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
  const first = canonicalize(head) ?? ''
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
 * Opens a backup.
 * @throws BookError when the passphrase is another, or the file is not as it was written; then it gives nothing.
 */
export async function decrypted(file: Blob, passphrase: string): Promise<Blob> {
  const lines = linesOf(file)
  const { value: firstLine } = await lines.next()
  const first = new TextDecoder().decode(firstLine)
  const head = readHead(first)
  const key = await keyOf(passphrase, head)
  const opened: Blob[] = []
  let piece = 0
  let { value: line, done } = await lines.next()
  if (done || line === undefined) throw damaged(2)
  while (line !== undefined) {
    const following = await lines.next()
    done = following.done
    const bytes = fromBase64(new TextDecoder().decode(line))
    if (!bytes) throw damaged(piece + 2)
    try {
      opened.push(new Blob([await crypto.subtle.decrypt(sealOf(first, piece, done === true), key, bytes)]))
    } catch {
      if (piece > 0) throw damaged(piece + 2)
      throw refuse(
        'passphrase',
        say`The passphrase does not open this file, or the beginning of the file was changed. Type it again; mind capitals and spaces.`,
      )
    }
    piece++
    line = following.value ?? undefined
  }
  return new Blob(opened)
}

function readHead(text: string): Head {
  try {
    const head = headSchema.safeParse(JSON.parse(text))
    if (head.success && canonicalize(head.data) === text) return head.data
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
