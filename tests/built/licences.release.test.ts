/** What is shipped: whose it is, and that installing it runs no script. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { packageOf } from '../../lib/package/licences.ts'

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url))
const read = (path: string): string => readFileSync(at(path), 'utf8')

interface Package {
  version: string
  dependencies?: Record<string, string>
}

/** The packages named in dependencies, and those that they need. */
function shipped(): string[] {
  const queue = Object.keys((JSON.parse(read('package.json')) as { dependencies: object }).dependencies)
  const seen = new Set<string>()
  for (let name = queue.pop(); name !== undefined; name = queue.pop()) {
    if (seen.has(name)) continue
    seen.add(name)
    const { dependencies = {} } = JSON.parse(read(`node_modules/${name}/package.json`)) as Package
    queue.push(...Object.keys(dependencies))
  }
  return [...seen]
}

/** `name version` of each package that a list has a text for. */
function listed(file: string): Record<string, string> {
  const [, ...entries] = read(file).split(/\n-{80}\n/)
  return Object.fromEntries(entries.map((entry) => [entry.trim().split(' ')[0] ?? '', entry]))
}

describe.each([
  ['.output/chrome-mv3/licences.txt', ['preact', 'zod', 'idb', '@cantoo/pdf-lib']],
  ['.output/firefox-mv3/licences.txt', ['preact', 'zod', 'idb', '@cantoo/pdf-lib']],
  ['.output/package/licences.txt', ['preact', 'zod']],
])('%s', (file, known) => {
  it('has the text of the licence of every package that is in the build', () => {
    const list = listed(file)
    for (const name of known) expect(Object.keys(list)).toContain(name)
    for (const [name, text] of Object.entries(list)) {
      const { version } = JSON.parse(read(`node_modules/${name}/package.json`)) as Package
      expect(text.trim()).toMatch(/^\S+ \S+\nLicence: \S+/)
      expect(text.trim().split('\n')[0]).toBe(`${name} ${version}`)
      expect(text).toMatch(/copyright|Apache License|Mozilla Public License/i)
      expect(text.length).toBeGreaterThan(700)
    }
  })
})

it('misses no package that the source maps of a build name', () => {
  const folder = mkdtempSync(join(tmpdir(), 'maps-'))
  try {
    const script = `import { build } from 'wxt'
      await build({ browser: 'chrome', outDir: ${JSON.stringify(folder)}, vite: () => ({ build: { sourcemap: true } }) })`
    // A test runner says so to its children, and vite would compile for it.
    const { NODE_ENV: _, VITEST: __, ...env } = process.env
    execFileSync(process.execPath, ['--input-type=module', '-e', script], { cwd: at(''), env, stdio: 'pipe' })
    const maps = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.map'))
    const sources = maps.flatMap(
      (name) => (JSON.parse(readFileSync(join(folder, name), 'utf8')) as { sources: string[] }).sources,
    )
    const named = sources.flatMap((source) => /.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(source)?.[1] ?? [])
    expect(new Set(named).size).toBeGreaterThan(10)
    const list = listed('.output/chrome-mv3/licences.txt')
    expect([...new Set(named)].filter((name) => !(name in list))).toEqual([])
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}, 120_000)

it('ships only packages under licences that let it be passed on', () => {
  const free = new Set(['MIT', 'ISC', 'Apache-2.0', 'MPL-2.0', 'BSD-3-Clause', 'BSD-2-Clause', '0BSD'])
  for (const name of shipped()) {
    const { license = '' } = JSON.parse(read(`node_modules/${name}/package.json`)) as { license?: string }
    expect(free.has(license) ? '' : `${name}: ${license}`).toBe('')
  }
})

it('knows which package a module is of', () => {
  expect(packageOf('/a/node_modules/@cantoo/pdf-lib/es/index.js')).toBe('/a/node_modules/@cantoo/pdf-lib')
  expect(packageOf('/a/node_modules/x/node_modules/idb/build/index.js?commonjs')).toBe(
    '/a/node_modules/x/node_modules/idb',
  )
  expect(packageOf('\0vite/preload-helper.js')).toMatch(/node_modules\/vite$/)
  expect(packageOf('/a/lib/book/chain.ts')).toBeUndefined()
})

it('needs no script of a package when it is installed: only the project’s own, which prepares types', () => {
  const { packages } = JSON.parse(read('package-lock.json')) as {
    packages: Record<string, { hasInstallScript?: boolean }>
  }
  const scripts = Object.entries(packages).flatMap(([name, { hasInstallScript }]) => (hasInstallScript ? [name] : []))
  // '' is the project itself: `wxt prepare`. fsevents is for macOS and is fetched there only.
  expect(scripts.filter((name) => name !== 'node_modules/fsevents')).toEqual([''])
})
