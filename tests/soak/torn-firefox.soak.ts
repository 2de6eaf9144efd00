/** `torn` in Firefox. SOAK_KILLS sets how often, SOAK_SEED repeats the moments. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Row } from '../bench/part.ts'
import { generator } from '../random.ts'
import { rowsOf } from './torn.soak.ts'
import { tearingFirefox } from './torn-firefox.ts'

export default async function tornFirefox(): Promise<Row[]> {
  const seed = Number(process.env['SOAK_SEED'] ?? Date.now() % 1e9)
  const kills = Number(process.env['SOAK_KILLS'] ?? 60)
  const profile = mkdtempSync(join(tmpdir(), 'profile-'))
  try {
    return rowsOf(seed, kills, await tearingFirefox(profile, kills, generator(seed)))
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 })
  }
}
