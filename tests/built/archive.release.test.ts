/** The sources archive for a store's reviewer: what is built from it, elsewhere, has the same bytes. */
import { execFileSync } from 'node:child_process'
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { unzipSync } from 'fflate'
import { afterAll, expect, test } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'archive-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function run(cwd: string, script: string): void {
  // A test runner says so to its children, and vite would compile for it.
  const { NODE_ENV: _, VITEST: __, ...env } = process.env
  execFileSync(process.execPath, ['--input-type=module', '-e', script], { cwd, env, stdio: 'pipe' })
}

/** Packs for one browser into a folder; gives every archive's bytes by name. */
function pack(cwd: string, browser: string, to: string): Record<string, Buffer> {
  run(cwd, `import { zip } from 'wxt'; await zip({ browser: '${browser}', outDir: ${JSON.stringify(to)} })`)
  const names = readdirSync(to).filter((name) => name.endsWith('.zip'))
  return Object.fromEntries(names.map((name) => [name, readFileSync(join(to, name))]))
}

function files(of: string): Record<string, Buffer> {
  const names = readdirSync(of, { recursive: true, encoding: 'utf8' }).filter((name) =>
    statSync(join(of, name)).isFile(),
  )
  return Object.fromEntries(names.toSorted().map((name) => [name, readFileSync(join(of, name))]))
}

function differing(a: Record<string, Buffer>, b: Record<string, Buffer>): string[] {
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].filter((name) => !b[name] || !a[name]?.equals(b[name]))
}

test('archives packed twice, the second time from the first one’s sources in another place, are the same', () => {
  const first = pack(root, 'firefox', join(folder, 'first'))
  const sources = Object.keys(first).find((name) => name.endsWith('-sources.zip'))
  expect(Object.keys(first)).toHaveLength(2)
  const place = join(folder, 'elsewhere')
  for (const [name, bytes] of Object.entries(unzipSync(first[sources!]!))) {
    mkdirSync(dirname(join(place, name)), { recursive: true })
    writeFileSync(join(place, name), bytes)
  }
  // In place of `npm ci`, which needs a network; the lock file is in the archive.
  expect(readFileSync(join(place, 'package-lock.json'))).toEqual(readFileSync(join(root, 'package-lock.json')))
  symlinkSync(join(root, 'node_modules'), join(place, 'node_modules'))

  expect(differing(first, pack(place, 'firefox', join(folder, 'second')))).toEqual([])
  pack(place, 'chrome', join(folder, 'second'))
  for (const browser of ['chrome-mv3', 'firefox-mv3'])
    expect(differing(files(join(root, '.output', browser)), files(join(folder, 'second', browser)))).toEqual([])
  run(place, `await import('./lib/package/build.ts')`)
  expect(differing(files(join(root, '.output/package')), files(join(place, '.output/package')))).toEqual([])
}, 240_000)
