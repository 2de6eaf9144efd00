/** The package as npm packs it, installed into fresh pages: plain, React and Vue; typed, built, and run in a browser. */
import { execFileSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Browser } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { example, open, visit, withWidget } from './widget-pages.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const bin = (name: string) => join(root, 'node_modules/.bin', name)
// Below the repository, so that the frameworks and tools that are installed for the tests are found.
const folder = join(root, '.output/fresh')
const pages = fileURLToPath(new URL('../pages/widget-hosts/fresh/', import.meta.url))

let browser: Browser
let server: Server
let origin: string

function run(command: string, args: string[], cwd: string): string {
  return execFileSync(command, args, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] })
}

beforeAll(async () => {
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder, { recursive: true })
  run('npm', ['pack', '--pack-destination', folder], join(root, '.output/package'))
  const packed = readdirSync(folder).find((name) => name.endsWith('.tgz'))
  if (packed === undefined) throw new Error('npm pack left no file.')
  const app = join(folder, 'app')
  cpSync(pages, app, { recursive: true })
  writeFileSync(join(app, 'package.json'), JSON.stringify({ name: 'fresh', private: true, type: 'module' }))
  run('npm', ['install', '--prefer-offline', '--no-audit', '--no-fund', join(folder, packed)], app)
  server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://127.0.0.1').pathname
    const file = join(app, 'dist', path)
    if (!existsSync(file)) response.writeHead(204).end()
    else {
      const type = path.endsWith('.js') ? 'text/javascript' : 'text/html'
      response.writeHead(200, { 'content-type': type }).end(readFileSync(file))
    }
  })
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', () => resolve())
  })
  const address = server.address()
  origin = typeof address === 'object' ? `http://127.0.0.1:${address?.port}` : ''
  browser = await open('chromium')
})

afterAll(async () => {
  await browser?.close()
  server?.close()
})

test('its types hold in the three pages, with everything checked', () => {
  expect(run(bin('tsc'), ['--noEmit', '-p', '.'], join(folder, 'app'))).toBe('')
})

test('each page builds, shows the element and hears it', async () => {
  run(bin('vite'), ['build', '--logLevel', 'error'], join(folder, 'app'))
  for (const name of ['plain', 'react', 'vue']) {
    const { page, faults } = await visit(browser, `${origin}/${name}.html`)
    await withWidget(page, (widget, value) => void (widget.value = value), example)
    await page.waitForFunction(() => document.getElementById('heard')?.textContent === '2.98')
    expect([name, ...faults]).toEqual([name])
    await page.close()
  }
})

test('a server imports every entry and gets an engine, and an element that waits for a page', () => {
  const code = `
    import { GapsumWidget } from 'gapsum'
    import 'gapsum/react'
    import 'gapsum/vue'
    import { reduce } from 'gapsum/engine'
    import * as spanish from 'gapsum/engine.es.js'
    const sheet = { subject: 'enclosure', procedure: 'one-point', direction: 'depressurize',
      units: { flow: 'cfm', temperature: 'degF', length: 'ft' }, baseline: { before: [], after: [] },
      points: [{ pressure: -50, flow: 433 }], flowBasis: 'indicated', building: { volume: 8726 } }
    const values = ({ figures }) => Object.entries(figures).map(([id, { value, unit, low, high }]) => [id, value, unit, low, high])
    const [english, other] = [reduce(sheet), spanish.reduce(sheet)]
    console.log(JSON.stringify({ element: typeof GapsumWidget, found: english.figures['air-changes-50'].value.toFixed(2),
      same: JSON.stringify(values(english)) === JSON.stringify(values(other)),
      notes: [english, other].map(({ figures }) => figures['air-changes-50'].note.split('.')[0]) }))`
  const app = join(folder, 'app')
  expect(JSON.parse(run(process.execPath, ['--input-type=module', '-e', code], app))).toEqual({
    element: 'function',
    found: '2.98',
    same: true,
    notes: [expect.stringMatching(/^Temperatures not given/), expect.stringMatching(/^Sin temperaturas/)],
  })
})

test('the packed files are those that the exports name, with licence and manual', () => {
  const installed = join(folder, 'app/node_modules/gapsum')
  const manifest = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8')) as {
    exports: Record<string, string | { types: string; default: string }>
  }
  const named = Object.values(manifest.exports).flatMap((one) => (typeof one === 'string' ? [one] : Object.values(one)))
  for (const file of [...named, 'LICENSE', 'README.md'])
    expect(readFileSync(join(installed, file)).length).toBeGreaterThan(0)
})
