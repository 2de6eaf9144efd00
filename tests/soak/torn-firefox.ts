/** The same in Firefox, which keeps each database in a SQLite file with a log beside it. */
import { closeSync, existsSync, openSync, readdirSync, statSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { builtForFirefox, launchFirefox } from '../browser/firefox.ts'
import { bundle } from '../browser/isolated.ts'
import type { Seen } from './torn-page.ts'
import { bytesToCut, cut, Judge, pause, stillSaving, tornAfter, type Kind, type Of, type Outcome } from './torn.ts'

/**
 * The log of the book's own database, or of the second copy's newest: file names are a number and the letters of the
 * database's name, mixed.
 */
function logOf(profile: string, of: Of): string | undefined {
  const letters = of === 'book' ? /\/\d+[a-z]{6}\.sqlite-wal$/ : /\/\d+g[^/]{7,}\.sqlite-wal$/
  const above = join(profile, 'storage', 'default')
  if (!existsSync(above)) return undefined
  return readdirSync(above, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.includes('moz-extension') && letters.test(name))
    .map((name) => join(above, name))
    .toSorted((a, b) => statSync(a).mtimeMs - statSync(b).mtimeMs)
    .at(-1)
}

/** Writes over bytes in the last part of a file, as a disk does that did not write all it said; @returns whether it did. */
function overwrite(file: string | undefined, bytes: number, random: () => number): boolean {
  const size = file ? statSync(file).size : 0
  if (!file || size === 0) return false
  const length = Math.min(bytes, size)
  const at = Math.max(0, size - length - Math.floor(random() * 4096))
  const open = openSync(file, 'r+')
  writeSync(
    open,
    Uint8Array.from({ length }, () => Math.floor(random() * 256)),
    0,
    length,
    at,
  )
  closeSync(open)
  return true
}

/**
 * @param times how often the browser is killed; each kill is followed by a cut of the log, or by bytes written over it
 * @param ofBook after so many kills the logs of the book and of the second copy are torn in turns
 */
export async function tearingFirefox(
  profile: string,
  times: number,
  random: () => number,
  ofBook = times,
  extension = builtForFirefox,
): Promise<Outcome> {
  const code = await bundle('../soak/torn-page.ts', 'torn')
  const judge = new Judge()
  const { outcome, fills } = judge
  for (let time = 0; time <= times; time++) {
    const session = await launchFirefox({ profile, extension })
    const page = await session.browser.newPage()
    // The protocol does not tell when such a page has loaded.
    await page.goto(`${session.origin}/book.html#limits`, { timeout: 100 }).catch(() => undefined)
    await page.waitForSelector('main')
    judge.see((await page.evaluate(`${code}; globalThis.torn = torn; torn.look()`)) as Seen, time)
    if (time === times) {
      await session.close()
      break
    }
    void page.evaluate(`void torn.save(${time * 1000})`).catch(() => undefined)
    const hear = async () => {
      for (const [kind, what] of (await page.evaluate('torn.heard()')) as [Kind, string][]) judge.answered(kind, what)
    }
    const begun = Date.now()
    while (!fills.has(`fill-${time * 1000 + 1}`)) {
      stillSaving(begun, time)
      await hear()
    }
    const until = Date.now() + random() * 400
    while (Date.now() < until) await hear()
    await kill(session.browser.process()!.pid!)
    outcome.kills++
    const bytes = bytesToCut(random)
    const log = logOf(profile, tornAfter(time, ofBook))
    const torn = random() < 0.5 ? cut(log, bytes) : overwrite(log, bytes, random)
    if (torn) outcome.cuts++
  }
  return outcome
}

/** Ends every process of the browser at once. */
async function kill(pid: number): Promise<void> {
  process.kill(-pid, 'SIGKILL')
  const gone = () => {
    try {
      return process.kill(-pid, 0) && false
    } catch {
      return true
    }
  }
  while (!gone()) await pause(20)
}
