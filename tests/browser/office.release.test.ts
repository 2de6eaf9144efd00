/** What an office sets through the browsers' own management arrives, can be used, and cannot be changed. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { FormMap } from '../../lib/form/schema.ts'
import { startSite, type Site } from '../pages/site/server.ts'
import { id as firefoxId, launchFirefox, type FirefoxSession } from './firefox.ts'
import { launch, type Session } from './harness.ts'
import { confirm, modelOf, openDemo, openPlan } from './round.ts'
import { until } from './surface.ts'

let site: Site
beforeAll(async () => {
  site = await startSite()
})
afterAll(() => site.close())

function policy() {
  const { origin, pathname } = new URL(site.plain)
  const map: FormMap = {
    id: 'lc-7',
    name: 'Form LC-7 as the office has it',
    version: 4,
    created: '2026-01-05T08:00:00.000Z',
    updated: '2026-02-05T08:00:00.000Z',
    address: { origin, path: pathname },
    bindings: [
      {
        id: 'street',
        control: {
          kind: 'text',
          name: 'Street address',
          section: 'Property',
          attributes: {},
          placeholder: '',
          options: [],
          position: 1,
        },
        source: { from: 'text', text: '14 Tannery Row' },
      },
    ],
  }
  const limit = {
    id: 'amendment',
    name: 'Larch County amendment',
    figure: 'air-changes-50',
    value: '2.5',
    unit: '1/h',
    origin: 'Ordinance 12, 2026',
  }
  return { maps: [map], limits: [limit], company: 'Bellwether Lane Testing', theme: 'dark' }
}

async function expectOfficesThings(session: Session | FirefoxSession): Promise<void> {
  const popup = await openDemo(session, await session.open(site.plain))
  await popup.wait(/Form LC-7 as the office has it/)
  await popup.close()

  const maps = await session.openPage('/book.html#maps')
  await maps.wait(/Form LC-7 as the office has it/)
  expect(await maps.text()).toMatch(/from your office, 1 binding, version 4/)
  expect(await maps.has('button', /^Delete/)).toBe(false)
  await maps.close()
  const limits = await session.openPage('/book.html#limits')
  await limits.wait(/Larch County amendment/)
  expect(await limits.has('button', 'Copy to my own Larch County amendment')).toBe(true)
  expect(await limits.has('button', 'Delete Larch County amendment')).toBe(false)
  await limits.close()
  const settings = await session.openPage('/book.html#settings')
  await settings.wait(/Your office set for this browser: 1 form map, 1 limit, the company, the look/)
  expect(await settings.value('textbox', 'Company')).toBe('Bellwether Lane Testing')
  expect(await settings.text()).not.toMatch(/was left out/)
  await settings.close()
}

async function expectFill(session: FirefoxSession): Promise<void> {
  const page = await session.open(site.plain)
  const [line] = await confirm(await openPlan(session, page))
  expect(line).toMatchObject({ control: 'Street address', intended: '14 Tannery Row', outcome: 'entered' })
  expect((await modelOf(page))['street']).toBe('14 Tannery Row')
}

/** Where Chromium on Linux looks for what is managed; only the administrator may write there. */
const managed = '/etc/chromium/policies/managed'
let file = ''

function canManage(): boolean {
  try {
    mkdirSync(managed, { recursive: true })
    file = join(managed, `test-${process.pid}.json`)
    writeFileSync(file, '{}')
    rmSync(file)
    return true
  } catch {
    return false
  }
}

// Elsewhere only the administrator's own machine can show it; the same policy goes through Firefox below.
// oxlint-disable-next-line vitest/expect-expect -- the expectations stand in the function both browsers share
it.skipIf(process.platform !== 'linux' || !canManage())('Chromium: by a file of its managed policies', async () => {
  const session = await launch()
  try {
    const settings = await session.openPage('/book.html#settings')
    await settings.wait(/No office has set anything/)
    writeFileSync(file, JSON.stringify({ '3rdparty': { extensions: { [session.extension.id]: policy() } } }))
    // The browser sees the file by itself, and the open page follows.
    await settings.wait(/Your office set for this browser/, 60_000)
    await settings.close()
    await expectOfficesThings(session)
  } finally {
    rmSync(file, { force: true })
    await session.close()
  }
})

// oxlint-disable-next-line vitest/expect-expect -- the expectations stand in the function both browsers share
it.skipIf(process.platform !== 'linux')('Firefox: by the managed storage of the person’s home', async () => {
  const home = mkdtempSync(join(tmpdir(), 'home-'))
  const folder = join(home, '.mozilla', 'managed-storage')
  mkdirSync(folder, { recursive: true })
  writeFileSync(
    join(folder, `${firefoxId}.json`),
    JSON.stringify({ name: firefoxId, description: 'Set by the office', type: 'storage', data: policy() }),
  )
  const session = await launchFirefox({ home })
  try {
    await expectOfficesThings(session)
    await expectFill(session)
  } finally {
    await session.close()
    await until(async () => {
      rmSync(home, { recursive: true, force: true })
      return true
    })
  }
})
