/** `torn` in Firefox; in the last fifth of the kills the logs of both copies are torn in turns. SOAK_KILLS sets how often, SOAK_SEED repeats the moments. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Row } from '../bench/part.ts'
import { generator } from '../random.ts'
import { builtForFirefox } from '../browser/firefox.ts'
import { rowsOf } from './torn.soak.ts'
import { tearingFirefox } from './torn-firefox.ts'

/** Whoever builds meanwhile does not change what is tested. */
const extension = join(mkdtempSync(join(tmpdir(), 'extension-')), 'built')

export default async function tornFirefox(): Promise<Row[]> {
  const seed = Number(process.env['SOAK_SEED'] ?? Date.now() % 1e9)
  const kills = Number(process.env['SOAK_KILLS'] ?? 200)
  const profile = mkdtempSync(join(tmpdir(), 'profile-'))
  cpSync(builtForFirefox, extension, { recursive: true })
  try {
    return rowsOf(seed, kills, await tearingFirefox(profile, kills, generator(seed), Math.ceil(kills * 0.8), extension))
  } finally {
    rmSync(extension, { recursive: true, force: true })
    rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 })
  }
}
