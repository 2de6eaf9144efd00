/**
 * Every button of popup, sidebar and book is pressed the moment it is drawn. SOAK_PRESSES sets how often in all, half of
 * them while three loops keep the page busy; SOAK_SEED repeats them.
 */
import type { Row } from '../bench/part.ts'
import { launch } from '../browser/harness.ts'
import { pressAll } from '../browser/presses.ts'

const sections = ['entries', 'jobs', 'maps', 'devices', 'limits', 'review', 'settings']
const pages = ['/popup.html', '/sidepanel.html', ...sections.map((section) => `/book.html#${section}`)]

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
        const popup = await session.openPage('/popup.html')
        await popup.click('button', 'Open the demo job')
        await popup.wait(/Figures/)
        const view = path === '/popup.html' ? popup : await session.openPage(path)
        const found = await pressAll(view, { presses: Math.ceil(all / 2 / pages.length), seed, busy })
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
