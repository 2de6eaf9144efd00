/** What the table around a control says of it: the head of its row and the heads over its column. */
import { first } from './dom.ts'
import { anyControl, textIn } from './names.ts'
import { squeeze, tidy } from '../words.ts'

/** Cells that are looked at before one in its row. */
const widest = 100

/** Rows of heads that are looked at. */
const mostHeads = 4

const spanOf = (cell: Element, key: 'colSpan' | 'rowSpan'): number => (cell as HTMLTableCellElement)[key] || 1

/** The rows of heads at the top of a table: those of its head, else the first, and those after it that hold nothing else. */
function headRows(table: HTMLTableElement, row: Element): Element[] {
  const rows = [...table.querySelectorAll('tr')].slice(0, mostHeads)
  const heads: Element[] = []
  for (const each of rows) {
    const headed =
      each.parentElement?.localName === 'thead' || [...each.children].every(({ localName }) => localName === 'th')
    if (each === row || first(each, anyControl) || (heads.length > 0 && !headed)) break
    heads.push(each)
  }
  return heads
}

/** The heads over a column, the topmost first; one that spans several rows or columns counts for each of them. */
function headsOver(rows: readonly Element[], place: number): string[] {
  const texts: string[] = []
  // How many rows more each column is taken by a head from above.
  const taken: number[] = []
  for (const row of rows) {
    let column = 0
    const free = () => {
      while ((taken[column] ?? 0) > 0) taken[column++]! -= 1
    }
    for (const cell of [...row.children].slice(0, widest)) {
      free()
      const wide = Math.min(spanOf(cell, 'colSpan'), widest)
      if (column <= place && place < column + wide) texts.push(tidy(textIn(cell)))
      for (let at = 0; at < wide; at++) taken[column++] = spanOf(cell, 'rowSpan') - 1
    }
    free()
  }
  return texts.filter(Boolean)
}

/** Row header and column header of a control that stands in a table without a label of its own. */
export function inTable(element: Element): { row: string; column: string } | undefined {
  const cell = element.closest<HTMLTableCellElement>('td, th')
  const row = cell?.parentElement
  const table = cell?.closest('table')
  if (!cell || !row || !table) return undefined
  let before = ''
  let steps = 0
  for (let at = cell.previousElementSibling; at && !before && steps < widest; at = at.previousElementSibling, steps++)
    if (!at.querySelector(anyControl)) before = tidy(textIn(at))
  let place = 0
  for (let at = cell.previousElementSibling; at && place <= widest; at = at.previousElementSibling)
    place += spanOf(at, 'colSpan')
  const heads = place > widest ? [] : headsOver(headRows(table, row), place)
  return { row: before, column: squeeze([...new Set(heads)].join(' ')) }
}
