/**
 * Five hundred fills in one session of the browser, in one page: filled, put back, filled again. The memory of the page
 * with the helper in it, and of the background, is measured after a forced collection every fifty fills. SOAK_FILLS sets
 * how many fills.
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { CDPSession } from 'puppeteer-core'
import { startSite } from '../pages/site/server.ts'
import { built, helper, launch, type Session, type Surface } from '../browser/harness.ts'
import { mapPage } from '../browser/map-page.ts'
import { formOf, openDemo, openPlan } from '../browser/round.ts'
import type { Row } from '../bench/part.ts'

interface Used {
  helper: number
  background: number
  nodes: number
  listeners: number
}

async function heap(session: CDPSession): Promise<number> {
  for (let turn = 0; turn < 3; turn++) await session.send('HeapProfiler.collectGarbage')
  return (await session.send('Runtime.getHeapUsage')).usedSize
}

async function used(session: Session, page: CDPSession): Promise<Used> {
  const helperBytes = await heap(page)
  const { nodes, jsEventListeners: listeners } = await page.send('Memory.getDOMCounters')
  const [worker] = await session.extension.workers()
  if (!worker) throw new Error('The background does not run.')
  return { helper: helperBytes, background: await heap(worker.client), nodes, listeners }
}

/** One fill, from the plan that stands open to the receipt. Gives the number of controls that were not entered. */
async function once(ui: Surface, undo: boolean): Promise<number> {
  await ui.click('button', undo ? /^Put back \d+ controls?$/ : /^Fill \d+ controls?$/)
  const words = await ui.wait(undo ? /controls? put back/ : /controls? entered/, 60_000)
  return Number(/(\d+) needs? a look/.exec(words)?.[1] ?? 0)
}

const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length

/** The last fifth against the second: the first still warms up. */
function growth(list: readonly number[]): number {
  const fifth = Math.max(1, Math.floor(list.length / 5))
  return mean(list.slice(-fifth)) / mean(list.slice(fifth, 2 * fifth))
}

export default async function fills(): Promise<Row[]> {
  const count = Number(process.env['SOAK_FILLS'] ?? 500)
  const every = Math.max(2, Math.round(count / 10))
  const extension = join(mkdtempSync(join(tmpdir(), 'extension-')), 'built')
  cpSync(built, extension, { recursive: true })
  const site = await startSite()
  const session = await launch({ extension })
  try {
    const form = formOf(site, 'plain')
    const page = await session.open(form.url)
    await (await openDemo(session, page)).click('button', 'Map this page')
    await mapPage(page, await helper(page), form)
    const cdp = await page.createCDPSession()
    const ui = await openPlan(session, page)
    const points: Used[] = []
    let missed = 0
    for (let at = 1; at <= count; at++) {
      const undo = at % 2 === 0
      const open = await once(ui, undo).catch(async (error: unknown) => {
        throw new Error(
          `Fill ${at}: the page shows\n${await page.evaluate('document.body.innerText.slice(0, 300)').then(String)}`,
          { cause: error },
        )
      })
      if (!undo) missed += open
      if (at % every === 0) {
        const now = await used(session, cdp)
        points.push(now)
        console.log(
          `  ${String(at).padStart(4)} fills: helper and page ${(now.helper / 1e6).toFixed(2)} MB, background ${(now.background / 1e6).toFixed(2)} MB, ${now.nodes} nodes, ${now.listeners} listeners`,
        )
      }
      if (undo) await ui.click('button', 'Plan again')
      else await ui.click('button', 'Put back what was there')
    }
    const row = (what: string, list: readonly number[], most: number): Row => {
      const grown = growth(list)
      return { what, value: grown, unit: 'x', aim: `at most ${most}`, met: grown <= most }
    }
    return [
      { what: 'fills', value: count, unit: '' },
      { what: 'controls not entered', value: missed, unit: '', aim: 'none', met: missed === 0 },
      row(
        'memory of page and helper, last fifth to second',
        points.map((each) => each.helper),
        1.05,
      ),
      row(
        'memory of the background, last fifth to second',
        points.map((each) => each.background),
        1.05,
      ),
      row(
        'nodes of page and helper',
        points.map(({ nodes }) => nodes),
        1.02,
      ),
      row(
        'listeners of page and helper',
        points.map(({ listeners }) => listeners),
        1.02,
      ),
    ]
  } finally {
    await session.close()
    await site.close()
    rmSync(extension, { recursive: true, force: true })
  }
}
