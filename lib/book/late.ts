/** Lines of a fill that reach the book only after it: it did not take them at the time, or the page has changed them. */
import type { ReceiptLine } from '../form/schema.ts'
import { entryOfFill } from './entries.ts'
import { addFillLine, endFill, startFill } from './fills.ts'
import type { Fill, FillEntry } from './schema.ts'

const same = (one: ReceiptLine | undefined, other: ReceiptLine): boolean =>
  one?.outcome === other.outcome && one.readBack === other.readBack && one.note === other.note

/**
 * Notes the lines with their fill where that has not ended, else in an entry of their own beside it. Noting the same
 * lines twice changes nothing. A fill may be ended by somebody else meanwhile: what it did not take goes beside it then.
 * A fill that runs in the same tab by now, as that of the next step does, goes on.
 * @throws BookError when the fill does not fit its schema.
 */
export async function noteLate(
  fill: Fill,
  lines: readonly ReceiptLine[],
  context: Omit<Parameters<typeof startFill>[1], 'tab'>,
): Promise<FillEntry> {
  let id = fill.id
  let rest = lines
  let last: FillEntry | undefined
  for (let part = 2; ; part++) {
    let entry = await entryOfFill(id)
    if (!entry) {
      const bindings = new Set(rest.map(({ binding }) => binding))
      const planned = last ? fill.planned.filter(({ binding }) => bindings.has(binding)) : fill.planned
      try {
        await startFill({ ...fill, id, planned }, context)
        for (const line of rest) await addFillLine(id, line)
        entry = await endFill(id)
        // All of it is in there; only texts that are too long may be shorter.
        if (entry.complete) return entry
      } catch (error) {
        entry = await entryOfFill(id)
        if (!entry) throw error
      }
    }
    last = entry
    const noted = new Map(entry.lines.map((line) => [line.binding, line]))
    rest = rest.filter((line) => !same(noted.get(line.binding), line))
    if (rest.length === 0) return last
    id = `${fill.id}/${part}`
  }
}
