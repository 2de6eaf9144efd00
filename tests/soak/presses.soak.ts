/**
 * Every button of popup, sidebar, book and dock is pressed the moment it is drawn. SOAK_PRESSES sets how often in all, half of
 * them while three loops keep the page busy; SOAK_SEED repeats them.
 */
import type { Page } from 'puppeteer-core'
import type { Row } from '../bench/part.ts'
import { launch, type Session, type Surface } from '../browser/harness.ts'
import { pressAll, pressDock, type Pressed } from '../browser/presses.ts'
import { openDemo } from '../browser/round.ts'
import { startSite } from '../pages/site/server.ts'

const sections = ['entries', 'jobs', 'maps', 'devices', 'limits', 'review', 'settings']
const dock = 'the dock'
const pages = [dock, '/popup.html', '/sidepanel.html', ...sections.map((section) => `/book.html#${section}`)]

/** Mapping, and the plan of what is bound by then, in turns. */
export async function inDock(session: Session, wish: Parameters<typeof pressDock>[1]): Promise<Pressed> {
  const site = await startSite()
  try {
    let turn = 0
    const open = async (): Promise<{ page: Page; ui: Surface }> => {
      const page = await session.open(site.plain)
      const popup = await openDemo(session, page)
      const mapped = turn++ > 0 && /\d+ (bindings?|of \d+ left)/.test(await popup.text())
      await popup.click('button', mapped && turn % 2 === 0 ? 'Fill this page' : 'Map this page')
      const ui = await session.helper(page)
      await ui.wait(/Pick a control|Nothing is typed until you confirm|What goes into/)
      if (!mapped && (await ui.has('button', 'Propose for all'))) {
        await ui.click('button', 'Propose for all')
        await ui.click('button', /^Bind th/)
        await ui.wait(/kept/)
      }
      return { page, ui }
    }
    return await pressDock(open, wish)
  } finally {
    await site.close()
  }
}

async function inPage(session: Session, path: string, wish: Parameters<typeof pressAll>[1]): Promise<Pressed> {
  const popup = await session.openPage('/popup.html')
  await popup.click('button', 'Open the demo job')
  await popup.wait(/Figures/)
  return pressAll(path === '/popup.html' ? popup : await session.openPage(path), wish)
}

const told = (names: string[]) => {
  for (const name of new Set(names)) console.error(`  ${name}`)
}

export default async function presses(): Promise<Row[]> {
  const all = Number(process.env['SOAK_PRESSES'] ?? 2000)
  const seed = Number(process.env['SOAK_SEED'] ?? Date.now() % 1e9)
  const rows: Row[] = [{ what: 'seed (SOAK_SEED repeats a run)', value: seed, unit: '' }]
  for (const busy of [0, 3]) {
    let count = 0
    const dead: string[] = []
    const lost: string[] = []
    for (const path of pages) {
      const session = await launch()
      try {
        const wish = { presses: Math.ceil(all / 2 / pages.length), seed, busy }
        const found = path === dock ? await inDock(session, wish) : await inPage(session, path, wish)
        count += found.presses
        dead.push(...found.dead.map((name) => `${path} ${name}`))
        lost.push(...found.lost.map((name) => `${path} ${name}`))
      } finally {
        await session.close()
      }
    }
    told(dead.map((name) => `without effect: ${name}`))
    told(lost.map((name) => `without focus after it: ${name}`))
    const where = busy ? `${busy} busy loops` : 'idle'
    rows.push(
      { what: `presses, ${where}`, value: count, unit: '' },
      { what: `presses without effect, ${where}`, value: dead.length, unit: '', aim: 'none', met: dead.length === 0 },
      {
        what: `presses after which nothing has the focus, ${where}`,
        value: lost.length,
        unit: '',
        aim: 'none',
        met: lost.length === 0,
      },
    )
  }
  return rows
}
