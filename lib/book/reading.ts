/** Reading a book file in a worker, where there is one. What the worker cannot say, the page reads again itself. */
import { doNotFollow } from './entries.ts'
import { copyApart } from './origin.ts'
import type { BookSource } from './json.ts'
import { writeHead } from './journal/keep.ts'
import { outlinesOf, type Outlined } from './outlines.ts'
import type { Asked, Told } from './reader.ts'

/** Where the extension has the worker's script. */
const script = '/reader.js'

function start(): Worker | undefined {
  try {
    return typeof Worker === 'undefined' ? undefined : new Worker(script)
  } catch {
    return undefined
  }
}

/** What a worker tells, until it has ended. Whoever stops listening ends it. */
async function* listen(worker: Worker, asked: Asked): AsyncGenerator<Told> {
  const waiting: Told[] = []
  let wake: (() => void) | undefined
  const hear = (told: Told) => {
    waiting.push(told)
    wake?.()
  }
  worker.addEventListener('message', ({ data }: MessageEvent<Told>) => hear(data))
  for (const type of ['error', 'messageerror']) worker.addEventListener(type, () => hear({ trouble: type }))
  try {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker has no target origin
    worker.postMessage(asked)
    for (;;) {
      const told = waiting.shift()
      if (!told) {
        await new Promise<void>((resolve) => {
          wake = resolve
        })
        continue
      }
      yield told
      if ('ended' in told || 'trouble' in told) return
    }
  } finally {
    worker.terminate()
  }
}

/** Every record of a file in outline. The file is read once, and again only from where a worker could not read on. */
export async function* outlines(source: BookSource, onRead?: (share: number) => void): AsyncGenerator<Outlined> {
  let done = 0
  const worker = source.posted && start()
  if (worker && source.posted) {
    for await (const told of listen(worker, { work: 'outline', file: source.posted })) {
      source.signal?.throwIfAborted()
      if ('ended' in told) return
      if (!('outlined' in told)) continue
      for (const seal of told.known) source.known?.add(seal)
      onRead?.(told.share)
      for (const one of told.outlined) {
        yield one
        done++
      }
    }
  }
  let at = 0
  for await (const one of outlinesOf(source.items(done === 0 ? onRead : undefined))) if (at++ >= done) yield one
}

/**
 * Adds the entries of a file that follow an entry of the book, in a worker.
 * @param onAdded how many are in
 * @returns up to which entry it did so, and how many that are; `all`: there are no more
 * @throws BookError when the book has got an entry since
 */
export async function addAfter(
  source: BookSource,
  after: number,
  from: { file: string; at: string },
  onAdded?: (entries: number) => void,
): Promise<{ upTo: number; added: number; all: boolean }> {
  const done = { upTo: after, added: 0, all: false }
  const worker = source.posted && start()
  if (!worker || !source.posted) return done
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker has no target origin
  const stop = () => worker.postMessage({ work: 'stop' } satisfies Asked)
  source.signal?.throwIfAborted()
  source.signal?.addEventListener('abort', stop, { once: true })
  const asked: Asked = { work: 'add', file: source.posted, known: [...(source.known ?? [])], after, from }
  try {
    for await (const told of listen(worker, asked)) {
      if ('ended' in told) done.all = true
      else if ('newest' in told) throw doNotFollow(told.newest)
      else if ('added' in told) {
        Object.assign(done, { upTo: told.last.number, added: told.added })
        await writeHead(told.last).catch(console.error)
        if (told.origins) await copyApart(told.origins)
        onAdded?.(told.added)
      }
    }
  } finally {
    source.signal?.removeEventListener('abort', stop)
  }
  source.signal?.throwIfAborted()
  return done
}
