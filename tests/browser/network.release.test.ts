import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { startSite } from '../pages/site/server.ts'
import { built, launch, type Logged } from './harness.ts'
import { forms, round } from './round.ts'

/** Hosts that Chromium itself turns to; no page and no extension stands behind these. */
const browsersOwn = /^https?:\/\/([\w-]+\.)*(google|googleapis|gstatic|gvt1)\.com\//

function byExtension(log: Logged[]): Logged[] {
  return log.filter(({ url, by }) => by.startsWith('chrome-extension://') || url.startsWith('chrome-extension://'))
}

/** Runs inside the extension. */
const ask = (url: string) => fetch(url).catch(() => undefined)

/** A copy of the build without the policy that stops requests: what one looks like in the log. */
function withoutPolicy(): string {
  const copy = mkdtempSync(join(tmpdir(), 'without-policy-'))
  cpSync(built, copy, { recursive: true })
  const path = join(copy, 'manifest.json')
  const { content_security_policy: _, ...manifest } = JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>
  writeFileSync(path, JSON.stringify(manifest))
  return copy
}

it('would see a request of the popup or of the background, if the policy let one through', async () => {
  const site = await startSite()
  const extension = withoutPolicy()
  const session = await launch({ extension })
  const page = await session.open(site.plain)
  const popup = await session.openPopup(page)
  await popup.page.evaluate(ask, `${site.origin}/from-popup`)
  const [worker] = await session.extension.workers()
  await worker!.evaluate(ask, `${site.origin}/from-background`)
  const seen = byExtension(await session.closeAndReadNetwork()).map(({ url }) => new URL(url).pathname)
  await site.close()
  rmSync(extension, { recursive: true })
  expect(seen).toEqual(['/from-popup', '/from-background'])
})

it('makes no request in a whole job: neither popup, helper, book nor background', async () => {
  const site = await startSite()
  const session = await launch()
  for (const form of forms(site)) await round(session, site, form)
  const log = await session.closeAndReadNetwork()
  const paths = new Set(site.requests.map(({ method, path }) => `${method} ${path}`))
  await site.close()

  expect(byExtension(log)).toEqual([])
  // A request of the helper would carry the page's origin; these are the ones the pages make by themselves.
  const plain = new URL(site.plain).pathname
  const react = new URL(site.react).pathname
  expect([...paths].toSorted()).toEqual(
    ['/part-c/check.js', '/sheet-4/main.js', '/style.css', plain, react].map((path) => `GET ${path}`).toSorted(),
  )
  const elsewhere = log.filter(({ url }) => !url.startsWith(site.origin))
  expect(elsewhere.filter(({ url, by }) => by !== '' || !browsersOwn.test(url))).toEqual([])
})
