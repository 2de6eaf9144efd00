/**
 * Kills the browser while it saves, cuts the log of the database as a torn write does, starts it again, and holds the
 * book to what was answered before.
 */
import { existsSync, readdirSync, statSync, truncateSync } from 'node:fs'
import { join } from 'node:path'
import type { Session } from '../browser/harness.ts'
import { bundle } from '../browser/isolated.ts'
import type { Seen } from './torn-page.ts'

export interface Outcome {
  kills: number
  cuts: number
  /** Starts after which the database itself had lost something, which was given back. */
  givenBack: number
  /** Starts that found the whole database gone. */
  emptied: number
  /** Entries of fills that had begun and were nowhere after it. */
  lost: string[]
  /** Starts after which something was missing and nothing was said. */
  silent: number
  /** Starts after which the chain did not fit. */
  broken: number
  /** Starts after which a job was older than what had been answered. */
  older: number
  entries: number
}

export type Kind = 'entry' | 'fill' | 'job'

/** Holds the book after each start to what was answered before. */
export class Judge {
  readonly outcome: Outcome = {
    kills: 0,
    cuts: 0,
    givenBack: 0,
    emptied: 0,
    lost: [],
    silent: 0,
    broken: 0,
    older: 0,
    entries: 0,
  }
  readonly hashes = new Set<string>()
  readonly fills = new Set<string>()
  #typed = ''

  answered(kind: Kind, what: string): void {
    if (kind === 'entry') this.hashes.add(what)
    else if (kind === 'fill') this.fills.add(what)
    else this.#typed = what
  }

  see(seen: Seen, time: number): void {
    const { outcome, hashes, fills } = this
    outcome.entries = seen.hashes.length
    if (time > 0 && time % 20 === 0) console.error(`  after ${time} kills: ${JSON.stringify(outcome)}`)
    const have = new Set([...seen.hashes, ...seen.fills])
    const missing = [...hashes, ...fills].filter((one) => !have.has(one))
    for (const one of missing) {
      outcome.lost.push(`after kill ${time}: ${one}`)
      hashes.delete(one)
      fills.delete(one)
    }
    if (missing.length > 0 && !seen.told) outcome.silent++
    if (seen.told) outcome.givenBack++
    if (seen.told?.here === 0 && seen.told.held > 0) outcome.emptied++
    if (!seen.fits) outcome.broken++
    if (seen.typed < this.#typed) outcome.older++
    this.#typed = seen.typed
    for (const hash of seen.hashes) hashes.add(hash)
  }
}

/** Bytes that are cut off the log: those at which the loss was first seen, and any other. */
const cuts = [1, 3, 40, 2000]

/** Whose log is torn. */
export type Of = 'book' | 'second copy'

/** Whose log is torn after a kill: the book's, and after `ofBook` kills those of both copies in turns, in runs beside each other. */
export const tornAfter = (time: number, ofBook: number): Of =>
  time < ofBook || (time - ofBook) % 2 === 1 ? 'book' : 'second copy'

/** A few bytes mostly, else up to some pages. */
export const bytesToCut = (random: () => number): number =>
  random() < 0.8 ? cuts[Math.floor(random() * cuts.length)]! : 1 + Math.floor(random() * 30_000)

/** @throws Error when nothing was saved for five minutes, on however busy a machine */
export function stillSaving(begun: number, time: number): void {
  if (Date.now() - begun > 300_000) throw new Error(`Before kill ${time + 1} nothing was saved in five minutes.`)
}

export const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

/** The log that was last written of the book's database, or of the storage buckets, in Chromium's profile. */
function logOf(session: Session, of: Of): string | undefined {
  const folder = of === 'book' ? 'IndexedDB' : 'WebStorage'
  const above = join(session.profile, 'Default', folder)
  if (!existsSync(above)) return undefined
  const logs = readdirSync(above, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.log') && (of !== 'book' || name.startsWith(`chrome-extension_${session.id}_0`)))
    .map((name) => join(above, name))
  return logs.toSorted((a, b) => statSync(a).mtimeMs - statSync(b).mtimeMs).at(-1)
}

/** Cuts bytes off the end of a file; @returns whether there were so many. */
export function cut(file: string | undefined, bytes: number): boolean {
  if (!file) return false
  const { size } = statSync(file)
  if (size === 0) return false
  truncateSync(file, Math.max(0, size - bytes))
  return true
}

/**
 * @param times how often the browser is killed
 * @param torn how many of these kills are followed by a cut, spread evenly
 * @param ofBook after so many kills the second copy and the book's own database are cut in turns: both at once is more
 * than two copies can bear
 */
export async function tearing(
  session: Session,
  times: number,
  torn: number,
  random: () => number,
  ofBook = times,
): Promise<Outcome> {
  const code = await bundle('../soak/torn-page.ts', 'torn')
  const judge = new Judge()
  const { outcome, fills } = judge
  for (let time = 0; time <= times; time++) {
    const { page } = await session.openPage('/book.html#limits')
    judge.see((await page.evaluate(`${code}; globalThis.torn = torn; torn.look()`)) as Seen, time)
    if (time === times) break

    await page.exposeFunction('answered', (kind: Kind, what: string) => judge.answered(kind, what))
    void page.evaluate(`torn.save(${time * 1000})`).catch(() => undefined)
    // Even a busy machine has answered a few by then.
    const begun = Date.now()
    while (!fills.has(`fill-${time * 1000 + 1}`)) {
      stillSaving(begun, time)
      await page.evaluate('torn.heard()')
      await pause(20)
    }
    await pause(random() * 400)
    const tear = Math.floor(((time + 1) * torn) / times) > Math.floor((time * torn) / times)
    const bytes = bytesToCut(random)
    await session.restart(() => {
      if (tear && cut(logOf(session, tornAfter(time, ofBook)), bytes)) outcome.cuts++
    })
    outcome.kills++
  }
  return outcome
}
