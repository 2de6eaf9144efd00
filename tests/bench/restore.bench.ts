/** Taking in and writing out a long book in a real browser: how fast, and how much memory all of the browser takes. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { built, launch } from '../browser/harness.ts'
import { bundle } from '../browser/isolated.ts'
import type { Row } from './part.ts'

const size = Number(process.env['BENCH_ENTRIES'] ?? 20_000)
/** Lines of a fill: a rebate form with as many controls is common practice, no source. */
const lines = 24

const extension = join(mkdtempSync(join(tmpdir(), 'extension-')), 'built')

/** Megabytes of memory that all processes of a group hold for themselves (Linux). */
function memoryOf(group: number): number {
  let bytes = 0
  for (const pid of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    try {
      const [, , ofGroup] = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ')
      const [, resident, shared] = readFileSync(`/proc/${pid}/statm`, 'utf8').split(' ').map(Number)
      if (Number(ofGroup) === group) bytes += (resident! - shared!) * 4096
    } catch {
      // It ended meanwhile.
    }
  }
  return bytes / 1e6
}

export default async function restore(): Promise<Row[]> {
  const code = await bundle('../bench/restore-page.ts', 'bench')
  cpSync(built, extension, { recursive: true })
  const session = await launch({ extension, patience: 0 })
  const group = session.browser.process()!.pid!
  let most = 0
  const watch = setInterval(() => {
    most = Math.max(most, memoryOf(group))
  }, 200)
  try {
    const { page } = await session.openPage('/book.html#limits')
    await page.evaluate(`${code}; globalThis.bench = bench; undefined`)
    const megabytes = (await page.evaluate(`bench.make(${size}, ${lines})`)) as number
    const before = memoryOf(group)
    most = 0
    const { plan, taken } = (await page.evaluate('bench.takeIn()')) as { plan: number; taken: number }
    const mostIn = most
    most = 0
    const out = (await page.evaluate('bench.writeOut()')) as number
    const at = size.toLocaleString('en-US')
    return [
      { what: `${at} entries: the file`, value: megabytes, unit: 'MB' },
      { what: `${at} entries: to the plan`, value: plan, unit: 's' },
      { what: `${at} entries: taking in after it`, value: taken, unit: 's' },
      { what: 'entries planned and taken in a second', value: size / (plan + taken), unit: '' },
      { what: `${at} entries: writing out`, value: out, unit: 's' },
      { what: 'entries written out a second', value: size / out, unit: '' },
      { what: 'memory of the browser before it', value: before, unit: 'MB' },
      { what: 'the most while taking in', value: mostIn, unit: 'MB' },
      { what: 'the most while writing out', value: most, unit: 'MB' },
    ]
  } finally {
    clearInterval(watch)
    await session.close()
    rmSync(extension, { recursive: true, force: true })
  }
}
