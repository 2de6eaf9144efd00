/**
 * From the press on "Fill this page" in the popup to the plan that stands on the page: today's build, whose dock is a page
 * of its own in a frame, against the last build that drew into the page itself, in one run.
 */
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { built } from '../browser/harness.ts'
import type { Row } from './part.ts'
import { median, pressToPlan } from './press-to-plan.ts'

const rounds = Number(process.env['BENCH_ROUNDS'] ?? 25)
const root = fileURLToPath(new URL('../..', import.meta.url))

const git = (...words: string[]): string =>
  execFileSync('git', words, { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim()

/** The sources, with a build of them, before the dock had a page of its own: BENCH_BEFORE, or the last such commit. */
function before(folder: string): string {
  const [first] = git('log', '--diff-filter=A', '--reverse', '--format=%H', '--', 'entrypoints/dock/index.html').split(
    '\n',
  )
  const commit = process.env['BENCH_BEFORE'] ?? `${first}^`
  const [archive, sources] = [join(folder, 'sources.tar'), join(folder, 'sources')]
  mkdirSync(sources)
  git('archive', '--format=tar', `--output=${archive}`, commit)
  execFileSync('tar', ['-xf', archive, '-C', sources])
  symlinkSync(join(root, 'node_modules'), join(sources, 'node_modules'), 'junction')
  const run = (...words: string[]) => execFileSync(process.execPath, words, { cwd: sources, stdio: 'ignore' })
  run('lib/words/collect.ts')
  run('node_modules/wxt/bin/wxt.mjs', 'prepare')
  run('node_modules/wxt/bin/wxt.mjs', 'build')
  return sources
}

type Harness = Pick<typeof import('../browser/harness.ts'), 'launch'>
type Pages = Pick<typeof import('../browser/hostile.ts'), 'Attacked'>

/** The plan of a mapped form, opened again and again by the build and the drivers of one checkout. */
async function openings(sources: string, extension: string) {
  const drivers = (name: string): Promise<unknown> => import(pathToFileURL(join(sources, 'tests/browser', name)).href)
  const { launch } = (await drivers('harness.ts')) as Harness
  const { Attacked } = (await drivers('hostile.ts')) as Pages
  const attacked = new Attacked()
  await attacked.start(() => launch({ extension }))
  const once = async (): Promise<number> => (await pressToPlan(attacked, await attacked.visit('plain'), 20_000)).whole
  return { once, close: () => attacked.close() }
}

export default async function dock(): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'before-'))
  try {
    const sources = before(folder)
    const sides = [await openings(root, built), await openings(sources, join(sources, '.output/chrome-mv3'))] as const
    const times: [number[], number[]] = [[], []]
    try {
      for (let round = 0; round < rounds; round++)
        // Each goes first in every other round.
        for (const side of round % 2 ? ([0, 1] as const) : ([1, 0] as const)) times[side].push(await sides[side].once())
    } finally {
      for (const side of sides) await side.close()
    }
    const [now, then] = [median(times[0]), median(times[1])]
    return [
      { what: 'from the press to the plan on the page', value: now, unit: 'ms' },
      { what: 'the same when it was drawn into the page itself', value: then, unit: 'ms' },
      { what: 'ratio of the two', value: now / then, unit: 'x', aim: 'at most 1.3', met: now / then <= 1.3 },
    ]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
