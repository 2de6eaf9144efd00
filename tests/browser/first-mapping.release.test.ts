/** Clicks of a first mapping, counted over five pages in the built extension. The table is printed. */
import { afterAll, beforeAll, expect, test } from 'vitest'
import { startPlaces, type Places } from '../pages/places/server.ts'
import { startSite, type Site } from '../pages/site/server.ts'
import { firstMappings } from './first-mapping.ts'
import { launch, type Session } from './harness.ts'

let session: Session
let places: Places
let site: Site

beforeAll(async () => {
  ;[session, places, site] = await Promise.all([launch(), startPlaces(), startSite()])
})

afterAll(async () => {
  await session?.close()
  await places?.close()
  await site?.close()
})

test('what is proposed is bound with six clicks at most, and whole forms with few more', async () => {
  const all = await firstMappings(session, places, site)
  console.log(
    all
      .map(({ page, clicks, keys, bound, of }) => `${page}: ${clicks} clicks, ${keys} keys, ${bound} of ${of} bound`)
      .join('\n'),
  )
  for (const { page, clicks, keys } of all.slice(0, 3)) {
    expect([page, clicks <= 6]).toEqual([page, true])
    expect([page, keys]).toEqual([page, 0])
  }
})
