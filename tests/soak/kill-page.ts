/** What is asked of the book after the browser was killed, inside a page of the extension. */
import { entriesForwards, verify } from '../../lib/book/entries.ts'
import { entrySchema } from '../../lib/book/entry-schema.ts'
import { isFill } from '../../lib/book/rows.ts'
import { listRows } from '../../lib/book/search.ts'

/** Whether the chain fits, and what is torn: an entry that does not fit its schema, its row or its own plan. */
export async function look(): Promise<{ fits: boolean; entries: number; torn: string[]; lines: number }> {
  const verdict = await verify()
  const rows = new Map((await listRows({ limit: 100_000 })).map((row) => [row.number, row]))
  const torn: string[] = []
  let entries = 0
  let lines = 0
  for await (const entry of entriesForwards()) {
    entries++
    if (!entrySchema.safeParse(entry).success) torn.push(`entry ${entry.number} does not fit its schema`)
    if (rows.get(entry.number)?.hash !== entry.hash) torn.push(`entry ${entry.number} has no row of its own`)
    if (!isFill(entry)) continue
    lines += entry.lines.length
    const planned = new Map(entry.planned.map(({ binding, text }) => [binding, text]))
    for (const line of entry.lines) {
      if (planned.get(line.binding) !== line.intended)
        torn.push(`entry ${entry.number}: ${line.control} was not planned so`)
      if (line.outcome === 'entered' && line.readBack === '')
        torn.push(`entry ${entry.number}: ${line.control} is empty`)
    }
    if (entry.complete !== (entry.lines.length === entry.planned.length))
      torn.push(`entry ${entry.number} says wrongly whether it is complete`)
  }
  return { fits: verdict.ok, entries, torn, lines }
}
