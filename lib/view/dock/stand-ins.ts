/** Controls of the page as the dock has them: elements of its own that say of themselves what those on the page say. */
import type { PageImage } from '../../messages/dock-messages.ts'
import { cluesOf as allClues } from '../../form/page/clues.ts'
import type { Control } from '../../form/page/controls.ts'
import type { Clues } from '../../form/schema.ts'

/** Elements whose properties tell how a value is wanted; any other is drawn by the page's script and has none. */
const telling = new Set(['input', 'textarea', 'select'])

/** A form map keeps so many options of a control. */
const keptOptions = 50

function standIn(image: PageImage): Control {
  const { clues, attributes, parts } = image
  const element = document.createElement(telling.has(image.element) ? image.element : 'div')
  for (const [name, value] of attributes) element.setAttribute(name, value)
  return {
    kind: clues.kind,
    element,
    elements: [element],
    name: clues.name,
    section: clues.section,
    position: clues.position,
    far: { image, write: () => Promise.resolve({}) },
    ...(parts && { parts: parts.map(standIn) }),
  }
}

/** The controls, in the order of the page. */
export function standIns(images: readonly PageImage[]): Control[] {
  const controls = images.map(standIn)
  // Their order is asked for where several fit a binding: they stand in one tree.
  document
    .createElement('div')
    .append(...controls.flatMap(({ element, parts = [] }) => [element, ...parts.map((part) => part.element)]))
  return controls
}

/** Names a control to the page's script. */
export const keyOf = ({ far }: Control): string => far?.image.key ?? ''

/** The clues that a form map keeps. */
export function cluesOf(control: Control): Clues {
  const clues = allClues(control)
  return { ...clues, options: clues.options.slice(0, keptOptions) }
}
