/** Outlines over controls, in a layer that the page can neither style nor press. Besides them only numbers are drawn. */
import type { Look } from '../../form/looks.ts'
import { markClass, markStyle } from './mark-style.ts'
import { watchBoxes } from './watch-boxes.ts'

export interface Mark {
  elements: readonly Element[]
  look: Look
  tag: string
}

/**
 * Draws outlines in place of what the layer showed before, and keeps them at their controls until the signal aborts.
 * @returns draws them anew, with other looks
 */
export function drawMarks<M extends Mark>(
  layer: HTMLElement,
  marks: readonly M[],
  signal: AbortSignal,
  lookOf: (mark: M) => Look = ({ look }) => look,
): () => void {
  const lines = marks.map(({ tag }) => {
    const line = document.createElement('div')
    line.hidden = true
    if (tag) {
      const words = document.createElement('span')
      words.className = 'tg'
      words.textContent = tag
      line.append(words)
    }
    return line
  })
  layer.replaceChildren(...lines)
  // While a fill runs everything meets the pointer, also an empty layer over the whole page.
  layer.hidden = lines.length === 0
  let boxes: Parameters<Parameters<typeof watchBoxes>[1]>[0] = []
  const put = () => {
    for (const [at, mark] of marks.entries()) {
      const [line, box] = [lines[at], boxes[at]]
      if (!line) continue
      line.hidden = !box
      if (!box) continue
      line.className = markClass(lookOf(mark), box)
      line.style.cssText = markStyle(box)
    }
  }
  const stop = watchBoxes(
    marks.map(({ elements }) => elements),
    (now) => {
      boxes = now
      put()
    },
  )
  signal.addEventListener('abort', stop)
  return put
}
