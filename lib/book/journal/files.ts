/**
 * Flat files that hold what earlier runs of the browser copied. A file is written whole, beside the others, and takes
 * its name only when it is closed; nobody adds to it after that. Its last line says what is in it, so that a file that
 * was cut off counts for nothing.
 */
import { linesOf } from '../lines.ts'
import { fromLine, toLine } from './line.ts'

/** What the last line of a file says. */
interface Contents {
  /** Bytes before that line. */
  bytes: number
  lines: number
  /** Numbers of the entries, as ranges. */
  numbers: [from: number, to: number][]
  /** Runs of the browser whose second copy is in it whole. */
  runs: string[]
  /** Files that it takes the place of. */
  of: string[]
}

export interface Closed extends Contents {
  name: string
  file: File
}

type Folder = FileSystemDirectoryHandle

const ending = '.lines'
const blobStart = 'blob '

/** The folder of these files; undefined where a browser has none. */
export async function folder(): Promise<Folder | undefined> {
  const root = await (navigator.storage as Partial<StorageManager> | undefined)?.getDirectory?.()
  return root?.getDirectoryHandle('journal', { create: true })
}

async function last(file: File): Promise<string | undefined> {
  for (let length = 4096; ; length *= 16) {
    const text = await file.slice(-length).text()
    const start = text.lastIndexOf('\n', text.length - 2)
    if (start >= 0 && text.endsWith('\n')) return text.slice(start + 1, -1)
    if (length >= file.size) return text.endsWith('\n') ? text.slice(0, -1) : undefined
  }
}

async function closed(name: string, file: File): Promise<Closed | undefined> {
  const line = await last(file)
  const contents = fromLine(line) as Contents | undefined
  const whole = contents && contents.bytes + new Blob([line!]).size + 1 === file.size
  return whole ? { ...contents, name, file } : undefined
}

/** Names in the folder that end or begin so. */
async function names(dir: Folder, fits: (name: string) => boolean): Promise<string[]> {
  const all: string[] = []
  for await (const name of dir.keys()) if (fits(name)) all.push(name)
  return all.toSorted()
}

/** The whole files, the oldest first, without those whose place another took. */
export async function closedFiles(dir: Folder): Promise<Closed[]> {
  const all: Closed[] = []
  for (const name of await names(dir, (one) => one.endsWith(ending))) {
    const one = await closed(name, await (await dir.getFileHandle(name)).getFile())
    if (one) all.push(one)
  }
  const gone = new Set(all.flatMap(({ of }) => of))
  return all.filter(({ name }) => !gone.has(name))
}

/** The lines of the entries in a file. */
export async function* linesIn({ file, bytes }: Pick<Closed, 'file' | 'bytes'>): AsyncGenerator<string> {
  const decoder = new TextDecoder()
  for await (const line of linesOf(file.slice(0, bytes))) yield decoder.decode(line)
}

function ranges(numbers: Iterable<number>): Contents['numbers'] {
  const all: Contents['numbers'] = []
  for (const number of [...numbers].toSorted((a, b) => a - b)) {
    const before = all.at(-1)
    if (before && number <= before[1] + 1) before[1] = number
    else all.push([number, number])
  }
  return all
}

/** Every number of a file. */
export function* numbersIn({ numbers }: Pick<Closed, 'numbers'>): Generator<number> {
  for (const [from, to] of numbers) for (let number = from; number <= to; number++) yield number
}

/** Pieces of a file: texts or other files, each with the entries' numbers and how many lines it has. */
interface Piece {
  data: string | Blob
  numbers: Iterable<number>
  lines: number
}

/** Writes a file whole. @throws when it does not read back as it was written; what was there before then stays. */
async function write(
  dir: Folder,
  pieces: AsyncIterable<Piece> | Iterable<Piece>,
  runs: readonly string[],
  of: readonly string[],
): Promise<void> {
  const newest = (await names(dir, (one) => one.endsWith(ending))).at(-1)
  const name = `${String(Number.parseInt(newest ?? '0', 10) + 1).padStart(9, '0')}${ending}`
  const handle = await dir.getFileHandle(name, { create: true })
  const out = await handle.createWritable()
  const numbers = new Set<number>()
  let [bytes, lines] = [0, 0]
  try {
    for await (const piece of pieces) {
      const blob = new Blob([piece.data])
      await out.write(blob)
      bytes += blob.size
      lines += piece.lines
      for (const number of piece.numbers) numbers.add(number)
    }
    const contents: Contents = { bytes, lines, numbers: ranges(numbers), runs: [...runs], of: [...of] }
    await out.write(`${toLine(contents)}\n`)
    await out.close()
  } catch (error) {
    await out.abort().catch(() => undefined)
    throw error
  }
  const back = await closed(name, await handle.getFile())
  if (back?.bytes !== bytes) throw new Error('The second copy was not put away whole.')
}

export interface Line {
  number: number
  line: string
}

/** Puts the lines of runs away in a file of their own. */
export async function putLines(
  dir: Folder,
  batches: AsyncIterable<Line[]> | Iterable<Line[]>,
  runs: readonly string[],
): Promise<void> {
  async function* pieces() {
    for await (const batch of batches) {
      yield {
        data: batch.map(({ line }) => `${line}\n`).join(''),
        numbers: batch.map(({ number }) => number),
        lines: batch.length,
      }
    }
  }
  await write(dir, pieces(), runs, [])
}

/**
 * Makes one file of the newest ones where the one before is not more than twice as long, so that ten years of use have
 * a dozen files, and each line is written again a dozen times at most. Those that it is made of go at the next start.
 */
export async function mergeFiles(dir: Folder, kept: (run: string) => boolean): Promise<void> {
  const files = await closedFiles(dir)
  const merged: Closed[] = []
  let bytes = 0
  for (const file of files.toReversed()) {
    if (merged.length > 0 && file.bytes > 2 * bytes) break
    merged.unshift(file)
    bytes += file.bytes
  }
  if (merged.length < 2) return
  const pieces = merged.map((one) => ({
    data: one.file.slice(0, one.bytes),
    numbers: numbersIn(one),
    lines: one.lines,
  }))
  const runs = merged.flatMap((one) => one.runs).filter(kept)
  await write(
    dir,
    pieces,
    runs,
    merged.map(({ name }) => name),
  )
}

/** Removes what counts for nothing: files whose place another took, and those that were cut off. */
export async function clearFiles(dir: Folder): Promise<void> {
  const kept = new Set((await closedFiles(dir)).map(({ name }) => name))
  for (const name of await names(dir, (one) => one.endsWith(ending))) if (!kept.has(name)) await dir.removeEntry(name)
}

/** Files of lines that do not end as they should; each line still has its own checksum. */
export async function damagedFiles(dir: Folder): Promise<Pick<Closed, 'file' | 'bytes'>[]> {
  const damaged: Pick<Closed, 'file' | 'bytes'>[] = []
  for (const name of await names(dir, (one) => one.endsWith(ending))) {
    const file = await (await dir.getFileHandle(name)).getFile()
    if (file.size > 0 && !(await closed(name, file))) damaged.push({ file, bytes: file.size })
  }
  return damaged
}

/** An attachment in a file of its own, named after its checksum and type. */
export interface FiledBlob {
  hash: string
  type: string
}

const blobName = ({ hash, type }: FiledBlob): string => `${blobStart}${hash} ${type.replace('/', ' ')}`

/** The attachments that are in files. */
export async function filedBlobs(dir: Folder): Promise<FiledBlob[]> {
  const all: FiledBlob[] = []
  for (const name of await names(dir, (one) => one.startsWith(blobStart))) {
    const [hash = '', ...type] = name.slice(blobStart.length).split(' ')
    // A file has its name before it has its bytes.
    if ((await (await dir.getFileHandle(name)).getFile()).size > 0) all.push({ hash, type: type.join('/') })
  }
  return all
}

export async function readBlob(dir: Folder, blob: FiledBlob): Promise<ArrayBuffer> {
  return (await (await dir.getFileHandle(blobName(blob))).getFile()).arrayBuffer()
}

export async function putBlob(dir: Folder, blob: FiledBlob, bytes: ArrayBuffer): Promise<void> {
  const out = await (await dir.getFileHandle(blobName(blob), { create: true })).createWritable()
  await out.write(bytes)
  await out.close()
}
