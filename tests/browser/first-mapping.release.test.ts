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

/** The most clicks that each may take, from the toolbar's button on; and the least that is bound then. */
const bounds = [
  { clicks: 6, keys: 0, bound: 13, of: 14 },
  { clicks: 6, keys: 0, bound: 9, of: 16 },
  { clicks: 6, keys: 0, bound: 10, of: 12 },
  { clicks: 30, keys: 40, bound: 21, of: 23 },
  { clicks: 30, keys: 45, bound: 26, of: 26 },
]

test('what is proposed is bound with six clicks at most, and whole forms with thirty', async () => {
  const all = await firstMappings(session, places, site)
  console.log(
    all
      .map(({ page, clicks, keys, bound, of }) => `${page}: ${clicks} clicks, ${keys} keys, ${bound} of ${of} bound`)
      .join('\n'),
  )
  const within = all.map(({ page, clicks, keys, bound, of }, index) => {
    const most = bounds[index]
    return most && clicks <= most.clicks && keys <= most.keys && bound >= most.bound && of === most.of
      ? 'within'
      : [page, clicks, keys, bound, of]
  })
  expect(within).toEqual(bounds.map(() => 'within'))
}, 240_000)
