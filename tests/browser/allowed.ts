/** A browser whose extension may look into frames of localhost. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { built, launch, type Session } from './harness.ts'

/** `permissions.request` cannot be accepted in a headless Chromium: a copy of the build has the permission beforehand. */
export async function launchAllowed(): Promise<{ session: Session; close: () => Promise<void> }> {
  const copy = mkdtempSync(join(tmpdir(), 'allowed-'))
  cpSync(built, copy, { recursive: true })
  const path = join(copy, 'manifest.json')
  const manifest = JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>
  writeFileSync(path, JSON.stringify({ ...manifest, host_permissions: ['http://localhost/*'] }))
  const session = await launch({ extension: copy })
  return {
    session,
    close: async () => {
      await session.close()
      rmSync(copy, { recursive: true, force: true })
    },
  }
}
