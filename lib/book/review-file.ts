/** One job as a file for a reviewer elsewhere: what was typed, what came of it, what was entered, and the proof. */
import * as z from 'zod/mini'
import { formMapSchema } from '../form/schema.ts'
import { devicesIn } from '../job/devices-in.ts'
import { roleKeys } from '../job/roles.ts'
import { reduceTest } from '../job/reduce.ts'
import { deviceSchema, jobSchema, type Job } from '../job/schema.ts'
import { reportSchema } from '../reduce/report.ts'
import { bytesOf } from './attachments.ts'
import { fromBase64, toBase64 } from './base64.ts'
import { check } from './check.ts'
import { database } from './database.ts'
import { getDevice } from './devices.ts'
import { entriesForwards } from './entries.ts'
import { entrySchema } from './entry-schema.ts'
import { refuse } from './error.ts'
import { timeline } from './notes.ts'
import { origins, type TakenIn } from './origin.ts'
import { listOthers } from './others.ts'
import { reviewNotesSchema, type ReviewNotes } from './review-schema.ts'
import { isFill } from './rows.ts'
import { readSealed, sealedFile, type Item } from './sealed.ts'
import { sha256 } from './sha256.ts'
import { sound } from './sound.ts'
import { say } from '../words/say.ts'

const hash = z.string().check(z.regex(/^([0-9a-f]{64})?$/))

const proof = {
  from: z.number(),
  before: hash,
  hashes: z.array(hash),
  /** Numbers of all entries of the job that the book holds; files of earlier versions do not say. */
  ofJob: z.optional(z.array(z.number())),
  /** Which of the book's entries came out of a file. */
  takenIn: z.optional(z.array(z.object({ from: z.number(), to: z.number(), at: z.string(), file: z.string() }))),
}

const schemas = {
  head: z.object({
    format: z.literal('gapsum-review'),
    version: z.literal(1),
    exported: z.string(),
    /** Version of the engine that computed the reports. */
    engine: z.string(),
    /** Id of the book that it was written from. */
    book: z.optional(z.string()),
  }),
  job: jobSchema,
  device: deviceSchema,
  map: formMapSchema,
  /** What a test came to. `key`: its role, as form maps name it. */
  report: z.object({ test: z.string(), key: z.string(), report: z.optional(reportSchema) }),
  entry: entrySchema,
  blob: z.object({ sha256: hash, type: z.string(), bytes: z.string() }),
  /** Hashes of the chain from entry `from` to the newest, and the one before them. */
  proof: z.object(proof),
  /** An entry of a book that the sender keeps beside, `of` its key, and then the proof of that book's chain. */
  beside: z.object({ of: z.string(), entry: entrySchema }),
  besideProof: z.object({ of: z.string(), name: z.string(), book: z.string(), ...proof }),
  notes: reviewNotesSchema,
}
type Kind = keyof typeof schemas
type ValueOf<K extends Kind> = z.infer<(typeof schemas)[K]>

export type ReviewFile = {
  head: ValueOf<'head'>
  job: Job
  devices: ValueOf<'device'>[]
  maps: ValueOf<'map'>[]
  reports: ValueOf<'report'>[]
  entries: ValueOf<'entry'>[]
  blobs: Map<string, { type: string; bytes: Uint8Array<ArrayBuffer> }>
  proof: ValueOf<'proof'>
  /** The same of each book that the sender keeps beside and that has entries of the job. */
  beside: Beside[]
  notes?: ReviewNotes
}

type Beside = { name: string; book: string; entries: ValueOf<'entry'>[]; proof: ValueOf<'proof'> }

/** Yields the review file of a job piece by piece. */
export function reviewParts(job: Job, engine: string): AsyncGenerator<string> {
  return sealedFile(items(job, engine))
}

async function* items(job: Job, engine: string): AsyncGenerator<Item> {
  const { book } = await origins()
  const head: ValueOf<'head'> = {
    format: 'gapsum-review',
    version: 1,
    exported: new Date().toISOString(),
    engine,
    book,
  }
  yield { kind: 'head', value: head }
  yield { kind: 'job', value: job }
  const entries = await timeline(job.id)
  const others = (
    await Promise.all((await listOthers()).map(async (one) => ({ one, entries: await timeline(job.id, one.key) })))
  ).filter((other) => other.entries.length > 0)
  const every = [...entries, ...others.flatMap((other) => other.entries)]
  const jobs = [job, ...every.flatMap((entry) => (isFill(entry) ? (entry.readings ?? []) : []))]
  const used = new Set(jobs.flatMap(({ tests }) => tests.flatMap(({ sheet }) => devicesIn(sheet))))
  const devices = (await Promise.all([...used].map(getDevice))).flatMap((device) => device ?? [])
  for (const device of devices) yield { kind: 'device', value: device }
  const db = await database()
  const versions = new Map(every.filter(isFill).map(({ map }) => [`${map.version} ${map.id}`, map]))
  for (const { id, version } of versions.values()) {
    const map = sound(formMapSchema, await db.get('maps', [id, version]))
    if (map) yield { kind: 'map', value: map }
  }
  for (const [test, key] of roleKeys(job.tests)) {
    const { report } = reduceTest(job, test, devices)
    yield { kind: 'report', value: { test: test.id, key, ...(report && { report }) } }
  }
  for (const entry of entries) yield { kind: 'entry', value: entry }
  const files = every.flatMap((entry) => (entry.kind === 'attachment' ? entry.file : []))
  for (const file of new Map(files.map((one) => [one.sha256, one])).values()) {
    // One that is gone is told to the reviewer; the rest goes all the same.
    const bytes = await bytesOf(file).catch(() => undefined)
    if (bytes) yield { kind: 'blob', value: { sha256: file.sha256, type: file.type, bytes: toBase64(bytes) } }
  }
  yield { kind: 'proof', value: await proofFrom(job.id, entries[0]?.number, (await origins()).takenIn) }
  for (const { one, entries: theirs } of others) {
    for (const entry of theirs) yield { kind: 'beside', value: { of: one.key, entry } }
    const own = await proofFrom(job.id, theirs[0]?.number, one.takenIn, one.key)
    yield { kind: 'besideProof', value: { of: one.key, name: one.name, book: one.book, ...own } }
  }
}

async function proofFrom(
  job: string,
  from: number | undefined,
  takenIn: TakenIn[],
  book = '',
): Promise<ValueOf<'proof'>> {
  const proven: ValueOf<'proof'> = { from: from ?? 1, before: '', hashes: [], takenIn }
  // Read from the entries themselves, not from the list: neither can leave one out by itself.
  const ofJob: number[] = []
  for await (const entry of entriesForwards(0, book)) {
    if (entry.job?.id === job) ofJob.push(entry.number)
    if (from === undefined || entry.number < from) continue
    if (entry.number === from) proven.before = entry.previous
    proven.hashes.push(entry.hash)
  }
  return { ...proven, ofJob }
}

/** The same file with what the reviewer noted, to be sent back. */
export function withNotes(file: Blob, notes: ReviewNotes): AsyncGenerator<string> {
  return sealedFile(
    (async function* () {
      for await (const { kind, value } of readSealed(file, Object.keys(schemas)))
        if (kind !== 'notes') yield { kind, value }
      yield { kind: 'notes', value: notes }
    })(),
  )
}

/**
 * Reads a review file.
 * @throws BookError when it is none, or not as it was written.
 */
export async function readReview(file: Blob): Promise<ReviewFile> {
  const found: { [K in Kind]: ValueOf<K>[] } = {
    head: [],
    job: [],
    device: [],
    map: [],
    report: [],
    entry: [],
    blob: [],
    proof: [],
    beside: [],
    besideProof: [],
    notes: [],
  }
  let first = true
  for await (const { kind, value, line } of readSealed(file, Object.keys(schemas))) {
    const one = kind as Kind
    if (first !== (one === 'head')) throw refuse(`line ${line}`, notOne)
    first = false
    const list: unknown[] = found[one]
    list.push(check<unknown>(schemas[one], value, say`Line ${line} of the file`))
  }
  const [[head], [job], [proven], [notes]] = [found.head, found.job, found.proof, found.notes]
  if (!head || !job || !proven) throw refuse('', notOne)
  const beside = found.besideProof.map(({ of, name, book, ...own }): Beside => {
    const entriesOf = found.beside.filter((one) => one.of === of).map(({ entry }) => entry)
    return { name, book, entries: entriesOf, proof: own }
  })
  const { device: devices, map: maps, report: reports, entry: entries } = found
  const blobs: ReviewFile['blobs'] = new Map()
  for (const { sha256: of, type, bytes } of found.blob) {
    const read = fromBase64(bytes)
    if (!read || (await sha256(read)) !== of)
      throw refuse('blob', say`An attachment is not what its fingerprint says. Get the file again.`)
    blobs.set(of, { type, bytes: read })
  }
  return { head, job, devices, maps, reports, entries, blobs, proof: proven, beside, ...(notes && { notes }) }
}

const notOne = say`This is not a review file. Choose a file that was made with “Review file” in a book.`
