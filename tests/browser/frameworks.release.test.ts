/**
 * Every field of every test page, filled through the real action of the built extension: right in the page's own state,
 * or the person is told. PAGES=vue,mui runs some of them.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { pages } from '../pages/frameworks/pages.ts'
import { serveFrameworks, type Served } from '../pages/frameworks/server.ts'
import { placePages } from '../pages/places/fields.ts'
import { startPlaces, type Places } from '../pages/places/server.ts'
import { built, launch, type Session } from './harness.ts'
import { RealFill, type TestedPage, type Told } from './real-fill.ts'

const only = process.env['PAGES']?.toLowerCase().split(',')
const chosen = <T extends { name: string }>(all: readonly T[]) =>
  all.filter(({ name }) => !only || only.some((one) => name.toLowerCase().includes(one)))

let session: Session
let real: RealFill
let served: Served
let places: Places

beforeAll(async () => {
  ;[session, served, places] = await Promise.all([launch(), serveFrameworks(), startPlaces()])
  real = await RealFill.start(session)
})

afterEach(() => real.close())

afterAll(async () => {
  await session?.close()
  await served?.close()
  await places?.close()
})

const rows = new Map<string, Told[]>()

interface Result {
  page: string
  controls: { control: string; kind: string; is: string; undone: string }[]
}

function resultOf(page: string, told: readonly Told[]): Result {
  const controls = told.map(({ control, kind, outcome, right, undone }) => ({
    control,
    kind,
    is: outcome === 'entered' ? (right ? 'right' : 'silently wrong') : 'told',
    undone,
  }))
  return { page, controls }
}

/** What there is to say against the fill of a page. */
async function faults(by: RealFill, tested: TestedPage) {
  const { told, early, strays, lines } = await by.run(tested)
  rows.set(tested.name, told)
  if (process.env['SHOW']) console.log(told)
  return {
    typedBeforeTheConfirm: early,
    changedThoughNotMeant: strays,
    linesMissing: tested.fields.length - lines,
    wrong: told.filter(({ right }) => !right),
    // The page shows or holds something else than was meant: never called entered.
    wronglyTold: tested.fields.flatMap(({ told: meant = false }, at) => {
      const one = told[at]
      return one && (one.outcome === 'entered') === meant ? [one] : []
    }),
    notPutBackUntold: told.filter(({ undone }) => undone === 'entered' || undone === 'not offered'),
    posts: served.posts() + places.posts(),
  }
}

const none = {
  typedBeforeTheConfirm: [],
  changedThoughNotMeant: [],
  linesMissing: 0,
  wrong: [],
  wronglyTold: [],
  notPutBackUntold: [],
  posts: 0,
}

test.each(chosen(pages))('every field of $name', async ({ entry, ...page }) => {
  expect(await faults(real, { ...page, url: served.url(entry) })).toEqual(none)
})

test.each(chosen(placePages).filter(({ apart }) => !apart))('every field of $name', async ({ path, ...page }) => {
  expect(await faults(real, { ...page, url: `${places.origin}/${path}`, apart: undefined })).toEqual(none)
})

// `permissions.request` cannot be accepted in a headless Chromium: a copy of the build has the permission beforehand.
test.each(chosen(placePages).filter(({ apart }) => apart))('every field of $name', async ({ path, ...page }) => {
  const copy = mkdtempSync(join(tmpdir(), 'allowed-'))
  cpSync(built, copy, { recursive: true })
  const file = join(copy, 'manifest.json')
  const manifest = JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>
  writeFileSync(file, JSON.stringify({ ...manifest, host_permissions: ['http://localhost/*'] }))
  const allowed = await launch({ extension: copy })
  try {
    const by = await RealFill.start(allowed)
    expect(await faults(by, { ...page, url: `${places.origin}/${path}`, apart: places.other })).toEqual(none)
  } finally {
    await allowed.close()
    rmSync(copy, { recursive: true, force: true })
  }
})

test('the table of tests/pages is what the pages did', async () => {
  const file = fileURLToPath(new URL('../pages/frameworks/results.json', import.meta.url))
  const kept = JSON.parse(readFileSync(file, 'utf8')) as Result[]
  // A run of some pages only stands for these; the others stay as they are.
  const shown = [...pages, ...placePages].flatMap(({ name }) => {
    const told = rows.get(name)
    return told ? [resultOf(name, told)] : kept.filter(({ page }) => page === name)
  })
  expect(JSON.stringify(shown)).not.toContain('silently wrong')
  await expect(`${JSON.stringify(shown, null, 2)}\n`).toMatchFileSnapshot(file)
  const width = Math.max(...shown.map(({ page }) => page.length))
  for (const { page, controls } of shown)
    console.log(page.padEnd(width), controls.map(({ control, is }) => `${control}: ${is}`).join(', '))
})
