/**
 * A segment of a book's chain on a shelf: a folder that something else carries between computers. A segment is a file of
 * sealed records that is written once and never changed, so that nothing on the way can conflict. Its last entry's hash
 * stands for all entries before it, and is signed with a key that never leaves the browser it was made in.
 */
import * as z from 'zod/mini'
import { whyNotKept } from '../attachments.ts'
import { fromBase64, toBase64 } from '../base64.ts'
import { seal } from '../chain.ts'
import { check } from '../check.ts'
import { database } from '../database.ts'
import { entrySchema } from '../entry-schema.ts'
import { refuse } from '../error.ts'
import type { Readable } from '../lines.ts'
import type { Entry } from '../schema.ts'
import { readSealed, sealedFile, type Item } from '../sealed.ts'
import { sha256 } from '../sha256.ts'
import { say } from '../../words/say.ts'

const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/))
const number = z.int().check(z.positive())

/** What a segment says of itself. */
const headSchema = z.object({
  format: z.literal('gapsum-segment'),
  version: z.literal(1),
  /** Id of the book. */
  book: z.string().check(z.regex(/^[0-9a-f-]{1,64}$/)),
  /** What its owner calls it. */
  name: z.string().check(z.minLength(1), z.maxLength(200)),
  first: number,
  last: number,
  /** Hash of the entry before the first; empty before entry 1. */
  previous: z.union([hash, z.literal('')]),
  /** Hash of the last entry. */
  hash,
  /** Public key (JWK of ECDSA P-256), and the signature over {@link signedText} in base 64. */
  key: z.string().check(z.maxLength(1000)),
  signature: z.string().check(z.maxLength(200)),
})

export type SegmentHead = z.infer<typeof headSchema>

const blobSchema = z.object({ sha256: hash, type: z.string().check(z.maxLength(100)), bytes: z.string() })

/** What a file name says of a segment. */
export interface SegmentName {
  book: string
  first: number
  last: number
  /** Beginning of the hash of its last entry. */
  hash: string
}

/** So many entries are in a segment at most. */
export const longestSegment = 1024

/** @example segmentName({ book: 'b2', first: 1, last: 214, hash: '9f86d081884c7d65…' }) // 'b2.00000001-00000214.9f86d081884c7d65.json' */
export const segmentName = ({ book, first, last, hash: whole }: SegmentName): string =>
  `${book}.${[first, last].map((one) => String(one).padStart(8, '0')).join('-')}.${whole.slice(0, 16)}.json`

/** What a file's name says; nothing for names of other files, such as those that a folder's carrier writes meanwhile. */
export function readSegmentName(name: string): SegmentName | undefined {
  const [, book = '', first = '', last = '', start = ''] =
    /^([0-9a-f-]{1,64})\.(\d{8,12})-(\d{8,12})\.([0-9a-f]{16})\.json$/.exec(name) ?? []
  return start ? { book, first: Number(first), last: Number(last), hash: start } : undefined
}

const curve = { name: 'ECDSA', namedCurve: 'P-256' } as const
const signing = { name: 'ECDSA', hash: 'SHA-256' } as const

/** Keys of a book that signs: the private one cannot be read, not even by the extension. */
export const newKeys = (): Promise<CryptoKeyPair> => crypto.subtle.generateKey(curve, false, ['sign', 'verify'])

/** The part of a public key that tells it from all others. */
export async function publicText(key: CryptoKey): Promise<string> {
  const { x = '', y = '' } = await crypto.subtle.exportKey('jwk', key)
  return JSON.stringify({ crv: curve.namedCurve, kty: 'EC', x, y })
}

const signedText = ({ book, first, last, previous, hash: end }: Omit<SegmentHead, 'key' | 'signature'>) =>
  new TextEncoder().encode(['gapsum-segment', book, first, last, previous, end].join('\n'))

async function isSigned(head: SegmentHead): Promise<boolean> {
  try {
    const jwk = JSON.parse(head.key) as JsonWebKey
    const key = await crypto.subtle.importKey('jwk', jwk, curve, false, ['verify'])
    const signature = fromBase64(head.signature)
    return signature !== undefined && (await crypto.subtle.verify(signing, key, signature, signedText(head)))
  } catch {
    return false
  }
}

/** Yields the file of a segment piece by piece. `entries` follow one another. */
export async function* writeSegment(
  { book, name, keys }: { book: string; name: string; keys: CryptoKeyPair },
  entries: readonly Entry[],
): AsyncGenerator<string> {
  const [first, last] = [entries[0], entries.at(-1)]
  if (!first || !last) throw new RangeError('A segment has at least one entry.')
  const said = {
    format: 'gapsum-segment' as const,
    version: 1 as const,
    book,
    name,
    first: first.number,
    last: last.number,
    previous: first.previous,
    hash: last.hash,
  }
  const signature = toBase64(await crypto.subtle.sign(signing, keys.privateKey, signedText(said)))
  const head: SegmentHead = { ...said, key: await publicText(keys.publicKey), signature }
  yield* sealedFile(
    (async function* (): AsyncGenerator<Item> {
      yield { kind: 'head', value: head }
      for (const value of entries) yield { kind: 'entry', value }
      for (const entry of entries) {
        if (entry.kind !== 'attachment') continue
        const blob = await (await database()).get('blobs', entry.file.sha256)
        if (blob) yield { kind: 'blob', value: { ...blob, bytes: toBase64(blob.bytes) } }
      }
    })(),
  )
}

/** A segment that was read and fits in itself: its records, its name, its chain and its signature. */
export interface Segment {
  head: SegmentHead
  entries: Entry[]
  blobs: { sha256: string; type: string; bytes: ArrayBuffer }[]
}

const broken = (what: string) => refuse('', what)

/**
 * Reads a segment as a whole.
 * @throws BookError in words when anything of it is not as its book wrote it
 */
export async function readSegment(name: SegmentName, file: Readable): Promise<Segment> {
  let head: SegmentHead | undefined
  const entries: Entry[] = []
  const blobs: Segment['blobs'] = []
  for await (const { kind, value, line } of readSealed(file, ['head', 'entry', 'blob'])) {
    const where = say`Line ${line} of the file`
    if ((kind === 'head') !== (head === undefined)) throw broken(say`It does not begin with what it is.`)
    if (kind === 'head') head = check(headSchema, value, where)
    else if (kind === 'entry') entries.push(check(entrySchema, value, where))
    else {
      const blob = check(blobSchema, value, where)
      const bytes = fromBase64(blob.bytes)
      if (!bytes || (await sha256(bytes)) !== blob.sha256 || whyNotKept(blob.sha256.slice(0, 16), bytes.buffer))
        throw broken(say`${where}: the attachment is not what its fingerprint says.`)
      blobs.push({ ...blob, bytes: bytes.buffer })
    }
    if (entries.length > longestSegment) throw broken(say`It has more entries than a segment may have.`)
  }
  if (!head) throw broken(say`It is empty.`)
  const { book, first, last, previous, hash: end } = head
  if (book !== name.book || first !== name.first || last !== name.last || !end.startsWith(name.hash))
    throw broken(say`It is not what its name says: it was renamed or exchanged.`)
  let before = previous
  for (const [at, entry] of entries.entries()) {
    if (entry.number !== first + at || entry.previous !== before || (await seal(entry)) !== entry.hash)
      throw broken(say`Its entry ${first + at} is not as it was written.`)
    before = entry.hash
  }
  if (before !== end || entries.length !== last - first + 1) throw broken(say`Entries of it are missing.`)
  if (!(await isSigned(head))) throw broken(say`Its signature does not fit: it was not written by that book.`)
  return { head, entries, blobs }
}
