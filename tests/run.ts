/**
 * The checks of the repository; a failing one does not stop the next. `release` runs the long ones. Tests in Chromium wait
 * much for the browser: those in Firefox and those without a browser run beside them.
 */
import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { findBrowser } from './browser/find-browser.ts'

const root = fileURLToPath(new URL('..', import.meta.url))
const scratch = mkdtempSync(join(tmpdir(), 'results-'))

interface Count {
  passed: number
  failed: number
}

/** Runs a command of node_modules/.bin, showing its output as it comes. Resolves to whether it succeeded. */
function run(command: string, ...args: string[]): Promise<boolean> {
  const bin = join(root, 'node_modules', '.bin')
  const separator = process.platform === 'win32' ? ';' : ':'
  const child = spawn(command, args, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
    env: { ...process.env, PATH: `${bin}${separator}${process.env['PATH'] ?? ''}` },
  })
  return new Promise((resolve) => {
    child.once('error', (error) => {
      console.error(`${command} could not be started: ${error.message}`)
      resolve(false)
    })
    child.once('close', (code) => resolve(code === 0))
  })
}

function one(succeeded: boolean): Count {
  return succeeded ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 }
}

interface VitestReport {
  numPassedTests: number
  numFailedTests: number
  testResults: { status: string; assertionResults: unknown[] }[]
}

async function vitest(project: string): Promise<Count> {
  const file = join(scratch, `${project}.json`)
  const succeeded = await run(
    'vitest',
    'run',
    '--project',
    project,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${file}`,
  )
  let report: VitestReport
  try {
    report = JSON.parse(readFileSync(file, 'utf8')) as VitestReport
  } catch {
    return { passed: 0, failed: 1 }
  }
  // A file that could not be loaded has no tests of its own to count.
  const broken = report.testResults.filter((f) => f.status === 'failed' && f.assertionResults.length === 0).length
  const failed = report.numFailedTests + broken
  return { passed: report.numPassedTests, failed: failed === 0 && !succeeded ? 1 : failed }
}

type Stage = [string, () => Promise<Count>]
const testsOf = (what: string, project: string): Stage => [what, () => vitest(project)]
const build: Stage = ['build', async () => one(await run('npm', 'run', '--silent', 'build'))]

/** Each step has lanes that run beside each other; the stages of a lane run one after the other. */
const everyTime: Stage[][][] = [
  [[['type check', async () => one(await run('tsc', '--noEmit'))]]],
  [[['lint', async () => one(await run('oxlint'))]]],
  [[['format', async () => one(await run('oxfmt', '--check'))]]],
  [[build]],
  [[testsOf('tests in Chromium', 'browser')], [testsOf('unit tests', 'unit'), testsOf('tests in Firefox', 'firefox')]],
]
/** What takes too long for every change: whole sweeps, every page that means harm, archives and the stores' checker. */
const release: Stage[][][] = [
  [[build]],
  [
    [testsOf('release tests in Chromium', 'release')],
    [
      testsOf('release tests in Firefox', 'release-firefox'),
      testsOf('release tests without a browser', 'release-unit'),
      testsOf('looks at pages in Chromium', 'release-looks'),
    ],
  ],
]

// Where they are missing they are installed here: two installations beside each other would lock one another out.
for (const kind of ['chromium', 'firefox'] as const) {
  try {
    findBrowser(kind)
  } catch {
    // Each test that needs it says what to do.
  }
}

const total: Count = { passed: 0, failed: 0 }

async function carryOut([name, stage]: Stage): Promise<void> {
  console.log(`\n== ${name}`)
  const started = Date.now()
  const count = await stage()
  total.passed += count.passed
  total.failed += count.failed
  console.log(
    `-- ${name}: ${count.passed} passed, ${count.failed} failed, ${Math.round((Date.now() - started) / 1000)} s`,
  )
}

for (const lanes of process.argv[2] === 'release' ? release : everyTime)
  await Promise.all(
    lanes.map(async (lane) => {
      for (const stage of lane) await carryOut(stage)
    }),
  )
rmSync(scratch, { recursive: true, force: true })
console.log(`\n${total.passed} passed, ${total.failed} failed`)
process.exitCode = total.failed === 0 ? 0 : 1
