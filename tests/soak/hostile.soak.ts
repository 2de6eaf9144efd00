/** 20,000 seeded cases: messages, form maps, and pages that change while they are filled. SOAK_SEED repeats a run. */
import type { Row } from '../bench/part.ts'
import { bundle, startBrowser } from '../browser/isolated.ts'
import { randomMaps, randomMessages, randomPages } from '../browser/random-cases.ts'

const row = (what: string, list: readonly string[]): Row => ({
  what,
  value: list.length,
  unit: '',
  aim: 'none',
  met: list.length === 0,
})

export default async function hostile(): Promise<Row[]> {
  const seed = Number(process.env['SOAK_SEED'] ?? Date.now() % 1e9)
  const cases = Number(process.env['SOAK_CASES'] ?? 20_000)
  const [messages, maps] = [Math.round(cases * 0.45), Math.round(cases * 0.4)]
  const pages = cases - messages - maps
  const [browser, code] = await Promise.all([startBrowser(), bundle('../pages/hostile/random-page.ts', 'bench')])
  try {
    const wrong = {
      messages: randomMessages(seed, messages),
      maps: await randomMaps(browser, code, seed, maps),
      pages: await randomPages(browser, code, seed, pages),
    }
    for (const line of Object.values(wrong).flat().slice(0, 30)) console.error(`  ${line}`)
    return [
      { what: 'seed (SOAK_SEED repeats a run)', value: seed, unit: '' },
      row(`wrong among ${messages} messages`, wrong.messages),
      row(`wrong among ${maps} form maps`, wrong.maps),
      row(`crashes and wrong entries among ${pages} pages`, wrong.pages),
    ]
  } finally {
    await browser.close()
  }
}
