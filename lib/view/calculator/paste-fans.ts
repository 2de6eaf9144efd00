/** Takes a pasted table of several fans into the readings, with a way back. */
import { placeFans } from '../../job/fans-edit.ts'
import { readFansPaste } from '../../job/paste-fans.ts'
import type { TypedPoint, TypedSheet } from '../../job/schema.ts'
import type { Desk } from './context.ts'
import { say } from '../../words/say.ts'

interface Ways {
  write: (change: (points: TypedPoint[]) => TypedPoint[]) => void
  offerUndo: Desk['offerUndo']
  setTold: (words: string) => void
}

export function pasteFans(text: string, row: number, sheet: TypedSheet, { write, offerUndo, setTold }: Ways): void {
  const { rows, problems } = readFansPaste(text, sheet.fans ?? [])
  const more = problems.length > 3 ? [say`${problems.length - 3} more lines were not taken.`] : []
  setTold([...problems.slice(0, 3), ...more].join(' '))
  if (rows.length === 0) return
  let before: TypedPoint[] = sheet.points
  let placed: TypedPoint[] = before
  write((points) => {
    before = points
    placed = placeFans(points, row, rows)
    return placed
  })
  offerUndo(rows.length === 1 ? say`1 point pasted.` : say`${rows.length} points pasted.`, () => {
    // What was typed since stays: only rows that still are as they were pasted go back.
    write((now) => now.flatMap((point, at) => (point === placed[at] ? (before[at] ?? []) : point)))
    setTold('')
  })
}
