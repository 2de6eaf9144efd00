/** The engine as it was at an earlier commit, to be measured in one run with the one of today. */
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import type { Sheet } from '../../lib/sheet/schema.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

const git = (...words: string[]): string =>
  execFileSync('git', words, { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim()

/** The commit before figures were given a budget of their uncertainty. */
function beforeBudget(): string {
  const [first] = git('log', '-S', 'budgetPartSchema', '--reverse', '--format=%H', '--', 'lib/reduce/report.ts').split(
    '\n',
  )
  if (!first) throw new Error('The history does not go back that far.')
  return git('rev-parse', '--verify', `${first}^`)
}

export interface Before {
  /** The commit, short. */
  commit: string
  reduce(sheet: Sheet): unknown
}

/**
 * The engine of a commit, taken out of the history of this clone: BENCH_BEFORE, or the commit before figures had a budget.
 *
 * @returns nothing, and says why, where the history is not there: a clone of the newest commit alone, a sources archive
 */
export async function engineBefore(): Promise<Before | undefined> {
  const folder = mkdtempSync(join(tmpdir(), 'engine-before-'))
  try {
    const named = process.env['BENCH_BEFORE']
    const commit = named ? git('rev-parse', '--verify', `${named}^{commit}`) : beforeBudget()
    const archive = join(folder, 'sources.tar')
    const sources = join(folder, 'sources')
    mkdirSync(sources)
    git('archive', '--format=tar', `--output=${archive}`, commit, 'lib', 'package.json')
    execFileSync('tar', ['-xf', archive, '-C', sources])
    symlinkSync(join(root, 'node_modules'), join(sources, 'node_modules'), 'junction')
    const file = pathToFileURL(join(sources, 'lib/reduce/reduce.ts')).href
    const { reduce } = (await import(file)) as Pick<Before, 'reduce'>
    return { commit: commit.slice(0, 7), reduce }
  } catch (error) {
    const why = error instanceof Error ? error.message.split('\n')[0] : ''
    console.log(`The engine before could not be taken from the history, so nothing is compared with it. ${why}`)
    return undefined
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
