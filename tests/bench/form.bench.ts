/** Filling and finding on a page, against the barest way to do it and against the test driver's own way. */
import { readFileSync } from 'node:fs'
import { gzipSync } from 'node:zlib'
import { Bench, bundle, startBrowser } from '../browser/isolated.ts'
import { built } from '../browser/harness.ts'
import type { Row } from './part.ts'

const markup = (count: number): string =>
  `<!doctype html><html lang="en-US"><h1>Form</h1>${Array.from(
    { length: count },
    (_, index) =>
      `${index % 10 === 0 ? `<h2>Part ${String.fromCodePoint(65 + ((index / 10) % 26))}${Math.floor(index / 260)}</h2>` : ''}<p><label for="f${index}">Field ${index}</label> <input id="f${index}" name="field-${index}"></p>`,
  ).join('')}</html>`

const middle = (list: readonly number[]): number => list.toSorted((a, b) => a - b)[Math.floor(list.length / 2)] ?? NaN

export default async function form(): Promise<Row[]> {
  const [browser, code] = await Promise.all([startBrowser(), bundle('../bench/form-page.ts', 'bench')])
  try {
    const texts = Array.from({ length: 40 }, (_, index) => `text ${index}`)
    const times: Record<'fill' | 'bare' | 'driver', number[]> = { fill: [], bare: [], driver: [] }
    let entered = 40
    for (let round = 0; round < 3; round++) {
      const one = await Bench.open(browser, code, markup(40))
      times.bare.push(await one.call<number>('bare', texts))
      await one.page.close()
      const two = await Bench.open(browser, code, markup(40))
      const result = await two.call<{ ms: number; entered: number }>('filled', texts)
      times.fill.push(result.ms)
      entered = Math.min(entered, result.entered)
      await two.page.close()
      const three = await Bench.open(browser, code, markup(40))
      const start = performance.now()
      for (const [index, text] of texts.entries()) await three.page.locator(`#f${index}`).fill(text)
      times.driver.push(performance.now() - start)
      await three.page.close()
    }
    const big = await Bench.open(browser, code, markup(5000))
    const search = await big.call<{ list: number; find: number; controls: number; found: number }>('finding')
    await big.page.close()
    const fill = middle(times.fill)
    const weight = gzipSync(readFileSync(`${built}/helper.js`), { level: 9 }).length / 1000
    return [
      { what: '40 fields filled, settled and read back', value: fill, unit: 'ms' },
      { what: '40 fields entered and verified', value: entered, unit: '', aim: '40', met: entered === 40 },
      { what: '40 fields set without a look', value: middle(times.bare), unit: 'ms' },
      { what: '40 fields filled by the test driver', value: middle(times.driver), unit: 'ms' },
      {
        what: 'fill against the test driver',
        value: fill / middle(times.driver),
        unit: 'times',
        aim: 'at most 2',
        met: fill <= 2 * middle(times.driver),
      },
      { what: '5,000 controls listed', value: search.list, unit: 'ms' },
      {
        what: '40 controls found among 5,000',
        value: search.find,
        unit: 'ms',
        aim: 'under 1,500',
        met: search.find < 1500,
      },
      { what: '40 controls found', value: search.found, unit: '', aim: '40', met: search.found === 40 },
      { what: 'helper put into a page, gzip', value: weight, unit: 'kB' },
    ]
  } finally {
    await browser.close()
  }
}
