/** The page as it is drawn: what stands in a shadow root, and what a slot shows, in their places. */
import { mostRead } from '../../bounds.ts'
import { is, own } from './dom.ts'
import { rootOf } from './shadow.ts'

/** Elements of one list or calendar that are looked through. */
const most = 20_000

/** What is drawn directly inside an element. */
export function* flatChildren(element: Element): Generator<Node> {
  const shadow = rootOf(element)
  if (shadow) return yield* shadow.childNodes
  if (own(element, 'localName') === 'slot') {
    const assigned = (element as HTMLSlotElement).assignedNodes()
    if (assigned.length > 0) return yield* assigned
  }
  yield* own(element, 'childNodes')
}

function* walk(element: Element, left: { count: number }, depth = 0): Generator<Element> {
  for (const child of flatChildren(element)) {
    if (Reflect.get(Node.prototype, 'nodeType', child) !== Node.ELEMENT_NODE) continue
    if (left.count-- <= 0 || depth > 400) return
    yield child as Element
    yield* walk(child as Element, left, depth + 1)
  }
}

/** Everything drawn inside an element that fits a selector, in the order in which it is drawn. */
export const flatAll = <E extends Element = HTMLElement>(element: Element, selector: string): E[] =>
  [...walk(element, { count: most })].filter((each) => is(each, selector)) as E[]

/** All text drawn inside an element, no longer than is ever used. */
export function flatText(element: Element): string {
  let text = ''
  const add = (node: Node, depth: number): void => {
    if (text.length > mostRead || depth > 400) return
    const type = Reflect.get(Node.prototype, 'nodeType', node) as number
    if (type === Node.TEXT_NODE) text += (node as Text).data.slice(0, mostRead)
    if (type !== Node.ELEMENT_NODE || is(node as Element, 'script, style, template')) return
    for (const child of flatChildren(node as Element)) add(child, depth + 1)
    text += ' '
  }
  add(element, 0)
  return text
}
