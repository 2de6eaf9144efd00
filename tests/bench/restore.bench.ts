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

/** What all processes of a group use (Linux): megabytes that each holds for itself, and seconds of a processor since they began. */
function usedBy(group: number): { memory: number; processor: number } {
  let [bytes, ticks] = [0, 0]
  for (const pid of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    try {
      const stat = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ')
      if (Number(stat[2]) !== group) continue
      const [, resident, shared] = readFileSync(`/proc/${pid}/statm`, 'utf8').split(' ').map(Number)
      bytes += (resident! - shared!) * 4096
      // proc(5): fields 14 and 15, in hundredths of a second.
      ticks += Number(stat[11]) + Number(stat[12])
    } catch {
      // It ended meanwhile.
    }
  }
  return { memory: bytes / 1e6, processor: ticks / 100 }
}

/** Ten times what a book of 20,000 entries took first: 142 s to the plan and 288 s to take in. */
const aim = (10 * 20_000) / (142 + 288)

const rate = (what: string, value: number): Row => ({
  what,
  value,
  unit: '',
  aim: `at least ${Math.round(aim)}`,
  met: value >= aim,
})

/** It was 2,000 MB first. */
const memory = (what: string, value: number): Row => ({
  what,
  value,
  unit: 'MB',
  aim: 'under 1,000',
  met: value < 1000,
})

export default async function restore(): Promise<Row[]> {
  const code = await bundle('../bench/restore-page.ts', 'bench')
  cpSync(built, extension, { recursive: true })
  const session = await launch({ extension, patience: 0 })
  const group = session.browser.process()!.pid!
  let most = 0
  const watch = setInterval(() => {
    most = Math.max(most, usedBy(group).memory)
  }, 200)
  try {
    const { page } = await session.openPage('/book.html#limits')
    await page.evaluate(`${code}; globalThis.bench = bench; undefined`)
    const megabytes = (await page.evaluate(`bench.make(${size}, ${lines})`)) as number
    const before = usedBy(group)
    most = 0
    const { plan, taken } = (await page.evaluate('bench.takeIn()')) as { plan: number; taken: number }
    const mostIn = most
    const between = usedBy(group)
    most = 0
    const out = (await page.evaluate('bench.writeOut()')) as number
    const after = usedBy(group)
    const at = size.toLocaleString('en-US')
    return [
      { what: `${at} entries: the file`, value: megabytes, unit: 'MB' },
      { what: `${at} entries: to the plan`, value: plan, unit: 's' },
      { what: `${at} entries: taking in after it`, value: taken, unit: 's' },
      rate('entries planned and taken in a second', size / (plan + taken)),
      { what: `${at} entries: writing out`, value: out, unit: 's' },
      rate('entries written out a second', size / out),
      {
        what: 'processor time of the browser for plan and taking in',
        value: between.processor - before.processor,
        unit: 's',
      },
      { what: 'processor time of the browser for writing out', value: after.processor - between.processor, unit: 's' },
      { what: 'memory of the browser before it', value: before.memory, unit: 'MB' },
      memory('the most memory of the browser while taking in', mostIn),
      memory('the most memory of the browser while writing out', most),
    ]
  } finally {
    clearInterval(watch)
    await session.close()
    rmSync(extension, { recursive: true, force: true })
  }
}
