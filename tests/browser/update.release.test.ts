/** An update keeps everything: the same profile and the same id, first with an earlier build, then with this one. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { keptBy, type Kept } from '../book/versions/kept.ts'
import { startSite, type Site } from '../pages/site/server.ts'
import { built, launch, type Session } from './harness.ts'
import { bookLines, formOf, round } from './round.ts'

let site: Site
let session: Session
let folder: string

beforeEach(async () => {
  site = await startSite()
  folder = mkdtempSync(join(tmpdir(), 'update-'))
})
afterEach(async () => {
  await session.close()
  await site.close()
  rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 })
})

const start = async (): Promise<void> => {
  session = await launch({ extension: join(folder, 'extension'), userDataDir: join(folder, 'profile') })
}

/** The build of this repository, its manifest changed, in the folder that gives the extension its id. */
function install(change: object = {}): void {
  const place = join(folder, 'extension')
  rmSync(place, { recursive: true, force: true })
  cpSync(built, place, { recursive: true })
  const file = join(place, 'manifest.json')
  const manifest = JSON.parse(readFileSync(file, 'utf8')) as object
  writeFileSync(file, JSON.stringify({ ...manifest, ...change }))
}

async function versionNow(): Promise<string> {
  const { page } = await session.openPage('/book.html#settings')
  const said = await page.evaluate(
    () =>
      (
        globalThis as unknown as { chrome: { runtime: { getManifest: () => { version: string } } } }
      ).chrome.runtime.getManifest().version,
  )
  await page.close()
  return said
}

it('drafts, jobs, form maps and the book of an earlier build are all there after the update', async () => {
  install({ version: '0.0.9' })
  await start()
  const form = formOf(site, 'plain')
  const { problems, lines: receipt, page } = await round(session, site, form)
  expect(problems).toEqual([])
  expect(await versionNow()).toBe('0.0.9')
  const popup = await session.openPopup(page)
  await popup.click('button', 'after')
  await popup.type('textbox', 'Flow, point 1, cfm', '761')
  await popup.wait(/kept \d/)
  await session.close()

  install()
  await start()
  const { version: now } = JSON.parse(readFileSync(join(built, 'manifest.json'), 'utf8')) as { version: string }
  expect(now).not.toBe('0.0.9')
  expect(await versionNow()).toBe(now)
  await session.openPage('/book.html#entry-1')
  const { lines, number } = await bookLines(session)
  expect(number).toBe('1')
  expect(lines.map(({ intended, readBack, outcome }) => [intended, readBack, outcome])).toEqual(
    receipt.map(({ intended, readBack, outcome }) => [intended, readBack, outcome]),
  )
  const again = await session.openPopup(await session.open(form.url))
  await again.wait(/14 Tannery Row/)
  expect(await again.value('textbox', 'Flow, point 1, cfm')).toBe('761')
  await again.wait(new RegExp(`${form.answers.length} (bindings|of \\d+ left)`))
})

it('the database as its first version left it is taken over, and its chain fits', async () => {
  const kept = keptBy('version-1')
  // Nothing of the extension runs yet, so that the database is not there.
  install({ background: undefined })
  await start()
  const page = await session.open(`chrome-extension://${session.extension.id}/licences.txt`)
  await page.evaluate(async (all: Kept) => {
    const opening = indexedDB.open('gapsum', 1)
    opening.addEventListener('upgradeneeded', () => {
      const made = opening.result
      made.createObjectStore('jobs', { keyPath: 'id' }).createIndex('updated', 'updated')
      made.createObjectStore('devices', { keyPath: 'id' })
      made.createObjectStore('maps', { keyPath: ['id', 'version'] })
      made.createObjectStore('tombstones', { keyPath: ['kind', 'id'] })
      made.createObjectStore('fills', { keyPath: 'id' })
      made.createObjectStore('lines', { keyPath: ['fill', 'index'] })
      const entries = made.createObjectStore('entries', { keyPath: 'number' })
      entries.createIndex('fill', 'id', { unique: true })
      entries.createIndex('job and map', ['job.id', 'map.id'])
      made.createObjectStore('rows', { keyPath: 'number' })
      made.createObjectStore('single')
    })
    const db = await new Promise<IDBDatabase>((resolve, reject) => {
      opening.addEventListener('success', () => resolve(opening.result))
      opening.addEventListener('error', () => reject(opening.error ?? new Error('The database did not open.')))
    })
    const tx = db.transaction(Object.keys(all), 'readwrite')
    for (const [name, values] of Object.entries(all))
      for (const value of values) {
        if (name !== 'single') tx.objectStore(name).put(value)
        else tx.objectStore(name).put((value as [string, unknown])[1], (value as [string, unknown])[0])
      }
    await new Promise((resolve, reject) => {
      tx.addEventListener('complete', resolve)
      tx.addEventListener('abort', () => reject(tx.error ?? new Error('The records were not written.')))
    })
    db.close()
  }, kept)
  await session.close()

  install()
  await start()

  expect(kept['entries']?.length).toBeGreaterThan(0)
  // A fill that was under way then has ended since, as an entry.
  const entries = kept['entries']!.length + kept['fills']!.length
  await session.openPage(`/book.html#entry-${entries}`)
  const { book, number } = await bookLines(session)
  expect(number).toBe(String(entries))
  await book.wait(/Chain verified/)
})
