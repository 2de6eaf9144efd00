/**
 * The browser is killed at random moments, half of them while readings are typed, half while a form is filled, with the
 * real extension. SOAK_KILLS sets how often, SOAK_SEED repeats the moments.
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { built, launch, helper, type Session } from '../browser/harness.ts'
import { bundle } from '../browser/isolated.ts'
import { mapPage } from '../browser/map-page.ts'
import { formOf, openDemo, openPlan } from '../browser/round.ts'
import { startSite, type Site } from '../pages/site/server.ts'
import type { Row } from '../bench/part.ts'
import { generator } from '../random.ts'

const cell = 'House pressure, point 1, Pa'
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

interface Found {
  kills: number
  /** Keystrokes that were sent before the kill and were gone after it: at most one is allowed for each kill. */
  lost: number[]
  torn: string[]
  broken: number
  entries: number
}

/** Types digits one by one until the browser is gone; gives how many the browser had taken. */
async function typeUntilGone(
  session: Session,
  site: Site,
  random: () => number,
): Promise<{ text: string; sent: number }> {
  const popup = await session.openPopup(await session.open(site.plain))
  if (await popup.has('button', 'Start a job')) await popup.click('button', 'Start a job')
  await popup.type('textbox', cell, '')
  await pause(300)
  const text = `-${Array.from({ length: 40 }, () => Math.floor(random() * 10)).join('')}`
  let sent = 0
  const keys = (async () => {
    for (const letter of text) {
      await popup.page.keyboard.press(letter as '0')
      sent++
      await pause(15 + random() * 60)
    }
  })().catch(() => undefined)
  await pause(random() * 1500)
  const taken = sent
  await session.restart()
  await keys
  return { text, sent: taken }
}

/** Whoever builds meanwhile does not change what is tested. */
const extension = join(mkdtempSync(join(tmpdir(), 'extension-')), 'built')

async function typing(site: Site, kills: number, random: () => number, found: Found): Promise<void> {
  const session = await launch({ extension })
  try {
    for (let time = 0; time < kills; time++) {
      const { text, sent } = await typeUntilGone(session, site, random)
      const popup = await session.openPopup(await session.open(site.plain))
      const value = await popup.value('textbox', cell)
      found.kills++
      if (!text.startsWith(value)) found.torn.push(`the cell holds “${value}” where “${text}” was typed`)
      found.lost.push(Math.max(0, sent - value.length))
    }
  } finally {
    await session.close()
  }
}

async function filling(site: Site, kills: number, random: () => number, found: Found): Promise<void> {
  const code = await bundle('../soak/kill-page.ts', 'killed')
  const form = formOf(site, 'plain')
  const session = await launch({ extension })
  try {
    const first = await session.open(form.url)
    const popup = await openDemo(session, first)
    await popup.click('button', 'Map this page')
    await mapPage(first, await helper(first), form)
    await first.close()
    for (let time = 0; time < kills; time++) {
      const ui = await openPlan(session, await session.open(form.url))
      await ui.click('button', /^Fill \d+ controls?$/)
      await pause(random() * 900)
      await session.restart()
      found.kills++
      // Opening the book turns what was cut off into an entry.
      const book = await session.openPage('/book.html')
      await book.wait(/entries shown|entry shown|No entries yet|of \d+ entr/)
      await pause(500)
      const after = (await book.page.evaluate(`${code}; killed.look()`)) as {
        fits: boolean
        entries: number
        torn: string[]
      }
      if (!after.fits) found.broken++
      found.torn.push(...after.torn)
      found.entries = after.entries
    }
  } finally {
    await session.close()
  }
}

export default async function kill(): Promise<Row[]> {
  const seed = Number(process.env['SOAK_SEED'] ?? Date.now() % 1e9)
  const kills = Number(process.env['SOAK_KILLS'] ?? 100)
  const random = generator(seed)
  const found: Found = { kills: 0, lost: [], torn: [], broken: 0, entries: 0 }
  cpSync(built, extension, { recursive: true })
  const site = await startSite()
  try {
    await typing(site, Math.ceil(kills / 2), random, found)
    await filling(site, Math.floor(kills / 2), random, found)
  } finally {
    await site.close()
    rmSync(extension, { recursive: true, force: true })
  }
  for (const words of new Set(found.torn)) console.error(`  ${words}`)
  const most = Math.max(0, ...found.lost)
  return [
    { what: 'seed (SOAK_SEED repeats a run)', value: seed, unit: '' },
    { what: 'kills', value: found.kills, unit: '', aim: 'all that were asked for', met: found.kills === kills },
    { what: 'keystrokes lost at a kill, the most', value: most, unit: '', aim: 'at most 1', met: most <= 1 },
    { what: 'kills that lost a keystroke', value: found.lost.filter((count) => count > 0).length, unit: '' },
    { what: 'torn cells and entries', value: found.torn.length, unit: '', aim: 'none', met: found.torn.length === 0 },
    { what: 'chains that did not fit', value: found.broken, unit: '', aim: 'none', met: found.broken === 0 },
    { what: 'entries in the book at the end', value: found.entries, unit: '', aim: 'one for each fill that began' },
  ]
}
