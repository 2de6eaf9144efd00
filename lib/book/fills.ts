/** Fills under way. All of it is in the database, so a worker that restarts in the middle goes on. */
import { keptLine } from '../form/fill/kept-line.ts'
import { receiptLineSchema, type ReceiptLine } from '../form/schema.ts'
import { devicesOf } from '../job/material.ts'
import { deviceSchema, jobSchema, type Device, type Job } from '../job/schema.ts'
import { fromBase64 } from './base64.ts'
import { basisSchema, type Basis } from './basis-schema.ts'
import { check } from './check.ts'
import { database } from './database.ts'
import { listDevices } from './devices.ts'
import { addEntry, entryOfFill, linesOf } from './entries.ts'
import { BookError, refuse } from './error.ts'
import { announce } from './notice.ts'
import { journalFill, journalFillLine } from './journal/keep.ts'
import { seriesFor } from './series.ts'
import { sha256 } from './sha256.ts'
import {
  fillSchema,
  openFillSchema,
  type FiledDocument,
  type Fill,
  type FillEntry,
  type GivenFile,
  type OpenFill,
} from './schema.ts'
import { allSound, sound } from './sound.ts'
import { say } from '../words/say.ts'

/** The files with their size and SHA-256: a page that is not encrypted lets no script in it compute one. */
async function sealedFiles(files: readonly GivenFile[]): Promise<Fill['files']> {
  const all = files.map(async ({ binding, name, type, text = '', bytes }) => {
    const held = bytes === undefined ? new TextEncoder().encode(text) : fromBase64(bytes)
    if (!held) {
      const message = say`${name} did not reach the book whole. Close the plan, open it again and start anew.`
      throw refuse(name, message)
    }
    return { binding, name, type, size: held.byteLength, sha256: await sha256(held) }
  })
  return Promise.all(all)
}

/** A job with the devices it was worked out with. */
type Typed = { job: Job; devices: Device[] | undefined }

function typedIn(json: string): Typed | undefined {
  try {
    const brought = JSON.parse(json) as { job?: unknown; devices?: unknown }
    // A page that was open before an update brings the job alone.
    const { job = brought, devices } = brought
    const read = sound(jobSchema, job)
    return read && { job: read, devices: Array.isArray(devices) ? allSound(deviceSchema, devices) : undefined }
  } catch {
    return undefined
  }
}

/** What the entry's report will be made from; a job that cannot be computed keeps no fill from beginning. */
async function basisFor({ job, devices }: Typed, write: WriteBasis | undefined): Promise<Basis | undefined> {
  try {
    return sound(basisSchema, write?.(job, devicesOf(job, devices ?? (await listDevices()))))
  } catch {
    return undefined
  }
}

/** Computes and writes out what stands behind the texts of a fill. */
export type WriteBasis = (job: Job, devices: Device[]) => Basis

/**
 * Notes a fill before its first control is touched. Noting the same fill twice changes nothing.
 * @param context `files`: what goes into its file controls; `readings`: the job that the texts were worked out from and
 * its devices, in JSON, for beside an open plan one may type on; left out: as they are at this moment; `write`: computes
 * what the entry's report is made from
 * @throws BookError when the fill does not fit its schema, or has already ended.
 */
export async function startFill(
  fill: Fill,
  context: {
    engine: string
    tab?: number | undefined
    files?: readonly GivenFile[] | undefined
    readings?: string | undefined
    write?: WriteBasis | undefined
  },
): Promise<void> {
  const checked = check(fillSchema, fill, say`The fill`)
  // An earlier one that is damaged keeps no fill from beginning.
  const series = await seriesFor(checked).catch(() => undefined)
  const files = await sealedFiles(context.files ?? [])
  const kept: Fill = {
    ...checked,
    ...(series !== undefined && { series }),
    ...(files && files.length > 0 && { files }),
  }
  // One page is filled at a time: what else is open in this tab was cut short by a reload of its page.
  if (context.tab !== undefined) await closeUnended((open) => open.tab !== context.tab || open.id === kept.id)
  const db = await database()
  const typed = await typedFor(kept.job.id, context.readings)
  // It is computed before the transaction, which ends while something else is awaited.
  const basis = typed && (await basisFor(typed, context.write))
  const tx = db.transaction(['fills', 'entries'], 'readwrite', { durability: 'strict' })
  const [open, entry] = await Promise.all([
    tx.objectStore('fills').get(kept.id),
    tx.objectStore('entries').index('fill').getKey(kept.id),
  ])
  if (entry !== undefined) throw ended(kept.id, entry)
  const begun: OpenFill | undefined = open
    ? undefined
    : {
        id: kept.id,
        fill: kept,
        engine: context.engine,
        touched: new Date().toISOString(),
        count: 0,
        ...(context.tab !== undefined && { tab: context.tab }),
        ...(typed && { readings: typed.job }),
        ...(basis && { basis }),
      }
  if (begun) await tx.objectStore('fills').put(begun)
  await tx.done
  if (begun) await journalFill(begun)
  announce({ what: 'fills', id: kept.id })
}

/** The job as it came along with the fill, else as it is kept at this moment. */
async function typedFor(id: string, json: string | undefined): Promise<Typed | undefined> {
  const along = json === undefined ? undefined : typedIn(json)
  if (along?.job.id === id) return along
  const job = sound(jobSchema, await (await database()).get('jobs', id))
  return job && { job, devices: undefined }
}

/**
 * Notes what became of one binding. A line of a binding that already has one replaces it: a message may arrive twice.
 * @throws BookError when the fill is not under way.
 */
export async function addFillLine(fill: string, line: ReceiptLine): Promise<void> {
  const kept = check(receiptLineSchema, keptLine(line), say`The line`)
  const tx = (await database()).transaction(['fills', 'lines', 'entries'], 'readwrite', { durability: 'strict' })
  const open = sound(openFillSchema, await tx.objectStore('fills').get(fill))
  if (!open) throw await notOpen(fill)
  const lines = tx.objectStore('lines')
  const written = await lines.getAll(linesOf(fill))
  const same = written.find((other) => sound(receiptLineSchema, other.line)?.binding === kept.binding)
  // A damaged line keeps its place.
  const index = same?.index ?? (written.at(-1)?.index ?? -1) + 1
  await Promise.all([
    lines.put({ fill, index, line: kept }),
    tx.objectStore('fills').put({ ...open, touched: new Date().toISOString(), count: open.count + 1 }),
    tx.done,
  ])
  await journalFillLine(fill, index, kept)
}

/**
 * Ends a fill and adds its entry. Ending it twice gives the same entry. A fill that ends with fewer lines than were
 * planned is kept as not complete.
 * @param document what was saved, where the form is a file
 * @throws BookError when the fill was never started.
 */
export async function endFill(fill: string, document?: FiledDocument): Promise<FillEntry> {
  const entry = await addEntry(fill, true, document)
  if (!entry) throw unknown(fill)
  return entry
}

/**
 * Turns fills that a crash or a closed tab left open into entries that are not complete, with the lines that were
 * written. `underWay` says which fills still run.
 */
export async function closeUnended(underWay: (open: OpenFill) => boolean = () => false): Promise<FillEntry[]> {
  const open = await listOpenFills()
  const closed: FillEntry[] = []
  for (const fill of open.toSorted((a, b) => a.fill.started.localeCompare(b.fill.started))) {
    const entry = underWay(fill) ? undefined : await addEntry(fill.id, false)
    if (entry) closed.push(entry)
  }
  return closed
}

/** Fills that have not ended. */
export async function listOpenFills(): Promise<OpenFill[]> {
  return allSound(openFillSchema, await (await database()).getAll('fills'))
}

async function notOpen(fill: string): Promise<BookError> {
  const entry = await entryOfFill(fill)
  return entry ? ended(fill, entry.number) : unknown(fill)
}

function ended(fill: string, entry: number): BookError {
  return new BookError([
    {
      code: 'ended',
      path: fill,
      message: say`This fill has ended: it is entry ${entry} of the book. Start a new fill.`,
    },
  ])
}

function unknown(fill: string): BookError {
  return new BookError([
    {
      code: 'unknown',
      path: fill,
      message: say`The book knows no such fill. Close the plan, open it again and start anew.`,
    },
  ])
}
