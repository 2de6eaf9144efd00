/** Long books for tests and measurements: sealed entries that follow one another, alike in shape and not in content. */
import { seal } from '../../lib/book/chain.ts'
import type { Entry, FillEntry } from '../../lib/book/schema.ts'
import { generator } from '../random.ts'

const streets = ['Tannery Row', 'Old Dairy Lane', 'Quarry Steps', 'Weir Street', 'Candlemaker Hill', 'Orchard Back']
const towns = ['Marrowby', 'Nether Fold', 'Saltbridge', 'Pell']
const controls = ['Conditioned volume', 'CFM at 50 Pa', 'Air changes per hour at 50 Pa', 'Date of test', 'Tester']

/** Entry `number` of such a book, without its place in the chain. */
export function manyEntry(number: number, lines = controls.length): Omit<FillEntry, 'previous' | 'hash'> {
  const random = generator(number)
  const street = `${1 + Math.floor(random() * 400)} ${streets[number % streets.length]}, ${towns[number % towns.length]}`
  const at = new Date(Date.UTC(2016, 0, 1) + number * 3_000_000).toISOString()
  const texts = Array.from({ length: lines }, (_, line) => ({
    binding: `b${line}`,
    control: `${controls[line % controls.length]}${line < controls.length ? '' : ` ${line}`}`,
    section: 'Part C',
    source: 'after: figure',
    text: (random() * 4000).toFixed(line % 3),
  }))
  return {
    id: `fill-${number}`,
    started: at,
    kind: 'fill',
    job: { id: `job-${Math.floor(number / 3)}`, name: street },
    map: { id: `map-${number % 7}`, name: `Sheet ${number % 7}`, version: 1 },
    page: { origin: 'https://comfort.larchcounty.example', path: `/apply/${number}/part-c`, title: 'Form LC-7' },
    planned: texts,
    number,
    at,
    engine: '0.1.0',
    complete: true,
    lines: texts.map(({ text, binding, control, section, source }) => ({
      binding,
      control,
      section,
      source,
      intended: text,
      before: '',
      readBack: text,
      outcome: random() < 0.001 ? 'refused' : 'entered',
      note: '',
    })),
  }
}

/** Entries up to `to`, in batches, each sealed after the one before; the first follows `after`. */
export async function* manyEntries(
  to: number,
  lines?: number,
  after = { number: 0, hash: '' },
): AsyncGenerator<Entry[]> {
  const size = 256
  let previous = after.hash
  for (let from = after.number + 1; from <= to; from += size) {
    const batch: Entry[] = []
    for (let number = from; number < Math.min(from + size, to + 1); number++) {
      const unsealed = { ...manyEntry(number, lines), previous }
      previous = await seal(unsealed)
      batch.push({ ...unsealed, hash: previous })
    }
    yield batch
  }
}
