/**
 * The browser is killed while it saves, and the log of its database is cut at random after it, as a torn write does; in
 * the last fifth of the kills those of both copies in turns.
 * SOAK_KILLS sets how often, SOAK_SEED repeats the moments.
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Row } from '../bench/part.ts'
import { built, launch } from '../browser/harness.ts'
import { generator } from '../random.ts'
import { tearing, type Outcome } from './torn.ts'

/** Whoever builds meanwhile does not change what is tested. */
const extension = join(mkdtempSync(join(tmpdir(), 'extension-')), 'built')

const none = (what: string, value: number): Row => ({ what, value, unit: '', aim: 'none', met: value === 0 })

export default async function torn(): Promise<Row[]> {
  const seed = Number(process.env['SOAK_SEED'] ?? Date.now() % 1e9)
  const kills = Number(process.env['SOAK_KILLS'] ?? 200)
  cpSync(built, extension, { recursive: true })
  const session = await launch({ extension })
  try {
    return rowsOf(seed, kills, await tearing(session, kills, kills, generator(seed), Math.ceil(kills * 0.8)))
  } finally {
    await session.close()
    rmSync(extension, { recursive: true, force: true })
  }
}

/** What came out of a run, with what is aimed at. */
export function rowsOf(seed: number, kills: number, found: Outcome): Row[] {
  for (const words of found.lost) console.error(`  lost ${words}`)
  return [
    { what: 'seed (SOAK_SEED repeats a run)', value: seed, unit: '' },
    { what: 'kills while saving', value: found.kills, unit: '', aim: 'all', met: found.kills === kills },
    { what: 'logs cut or written over after them', value: found.cuts, unit: '' },
    { what: 'databases that the browser deleted after it', value: found.emptied, unit: '' },
    { what: 'starts that gave something back, and told it', value: found.givenBack, unit: '' },
    { what: 'entries in the book at the end', value: found.entries, unit: '' },
    none('entries lost', found.lost.length),
    none('losses that were not told', found.silent),
    none('chains that did not fit', found.broken),
    none('jobs older than what was answered', found.older),
  ]
}
