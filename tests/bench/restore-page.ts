/** Makes a long book file, takes it in and writes it out again, inside a page of the extension. */
import { applyImport, planImport } from '../../lib/book/import.ts'
import { fileParts, openBookFile, wholeBook } from '../../lib/book/json.ts'
import type { Entry } from '../../lib/book/schema.ts'
import { manyEntries } from '../book/many.ts'

let file = new Blob()

async function* entries(size: number, lines: number): AsyncGenerator<Entry> {
  for await (const batch of manyEntries(size, lines)) yield* batch
}

async function written(parts: AsyncIterable<string>): Promise<Blob> {
  let whole = new Blob()
  let some: string[] = []
  let held = 0
  for await (const part of parts) {
    some.push(part)
    held += part.length
    if (held < 4_000_000) continue
    // What is in a Blob need not be in memory.
    whole = new Blob([whole, ...some])
    some = []
    held = 0
  }
  return new Blob([whole, ...some])
}

/** Megabytes of the file. */
export async function make(size: number, lines: number): Promise<number> {
  file = await written(fileParts({}, entries(size, lines)))
  return file.size / 1e6
}

const timed = async (work: () => Promise<unknown>): Promise<number> => {
  const start = performance.now()
  await work()
  return (performance.now() - start) / 1000
}

/** Seconds to the plan, and to take the file in. */
export async function takeIn(): Promise<{ plan: number; taken: number }> {
  const source = await openBookFile(file)
  let plan: Awaited<ReturnType<typeof planImport>>
  const planned = await timed(async () => {
    plan = await planImport(source)
  })
  return { plan: planned, taken: await timed(() => applyImport(plan, source)) }
}

/** Seconds to write the whole book out. */
export const writeOut = (): Promise<number> => timed(() => written(wholeBook()))
