/**
 * Fifty seeded redesigns of every test page (SOAK_REDESIGNS sets how many, SOAK_PAGES which pages): controls found again, and never another one
 * taken for them.
 */
import type { Row } from '../bench/part.ts'
import { bundle, startBrowser } from '../browser/isolated.ts'
import { redesigns, tableOf } from '../browser/redesigns.ts'
import { redesignsOf } from '../form/map/redesigned.ts'
import { librarySources, pageSources } from '../pages/places/pages.ts'

function inWords(count: number): Row[] {
  const { there, found, asked, wrong } = redesignsOf(Array.from({ length: count }, (_, index) => index + 1))
  for (const line of wrong) console.error(`in words, wrong, seed ${line}`)
  const share = (100 * (found + asked)) / there
  return [
    {
      what: 'forms in words: found again or asked about',
      value: share,
      unit: '%',
      aim: 'at least 95',
      met: share >= 95,
    },
    { what: 'forms in words: another taken', value: wrong.length, unit: '', aim: 'none', met: wrong.length === 0 },
  ]
}

export default async function soak(): Promise<Row[]> {
  const [browser, form, places, libraries] = await Promise.all([
    startBrowser(),
    bundle('../pages/places/redesign-bench.ts', 'bench'),
    pageSources(),
    librarySources(),
  ])
  try {
    const count = Number(process.env['SOAK_REDESIGNS'] ?? 50)
    const seeds = Array.from({ length: count }, (_, index) => index + 1)
    const named = new RegExp(process.env['SOAK_PAGES'] ?? '')
    const sources = [...places, ...libraries].filter(({ name }) => named.test(name))
    // Forms in words, without a browser: many more of them.
    const rows = inWords(40 * count)
    for (const anew of [false, true]) {
      const kind = anew ? ', in other words' : ''
      const totals = await redesigns(
        browser,
        form,
        sources,
        seeds,
        anew,
        ({ page, there, found, asked, wrong, lost }) => {
          console.log(`${page}${kind}: ${found} of ${there} found, ${asked} asked, ${wrong.length} wrong`)
          for (const line of wrong) console.error(`${page}${kind}, wrong, seed ${line}`)
          for (const line of lost) console.log(`${page}${kind}, seed ${line}`)
        },
      )
      console.log(tableOf(totals))
      for (const { page, there, found, asked } of totals) {
        const share = (100 * (found + asked)) / there
        const what = anew ? 'found again or asked about' : 'found again'
        rows.push({ what: `${page}${kind}: ${what}`, value: share, unit: '%', aim: 'at least 95', met: share >= 95 })
      }
      const wrong = totals.reduce((sum, total) => sum + total.wrong.length, 0)
      rows.push({
        what: `another control taken for the mapped one${kind}`,
        value: wrong,
        unit: '',
        aim: 'none',
        met: wrong === 0,
      })
    }
    return rows
  } finally {
    await browser.close()
  }
}
