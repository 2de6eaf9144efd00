/** A browser with the extension and the site of forms, for all tests of a file. */
import { afterAll, beforeAll } from 'vitest'
import { startSite, type Site } from '../pages/site/server.ts'
import { launch, type Session } from './harness.ts'

export interface BesideSite {
  session: Session
  site: Site
}

/** Both stand before the first test begins. */
export function besideSite(): BesideSite {
  const at = {} as BesideSite
  beforeAll(async () => {
    ;[at.session, at.site] = await Promise.all([launch(), startSite()])
  })
  afterAll(async () => {
    await at.session?.close()
    await at.site?.close()
  })
  return at
}
