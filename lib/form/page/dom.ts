/**
 * Looking at elements that may be forms. A form answers with its own field when one is named like what is asked
 * (`parentElement`, `matches`, `children`), in a content script's world as well; these ask the browser past that.
 */

const getters = new Map<string, () => unknown>()

/** What the browser answers by for a property, found once: pages have elements by the ten thousand. */
function getterOf(key: string): () => unknown {
  let at: object | null = Element.prototype
  for (; at && !Object.hasOwn(at, key);) at = Object.getPrototypeOf(at) as object | null
  const get = (at && Object.getOwnPropertyDescriptor(at, key)?.get) ?? (() => undefined)
  getters.set(key, get)
  return get
}

/** A property of the element as the browser has it, whatever fields it holds. */
export const own = <K extends keyof Element>(element: Element, key: K): Element[K] =>
  (getters.get(key) ?? getterOf(key)).call(element) as Element[K]

export const upward = (element: Element): Element | null => own(element, 'parentElement')
export const is = (element: Element, selector: string): boolean => Element.prototype.matches.call(element, selector)
export const holds = (element: Element, other: Node | null): boolean => Node.prototype.contains.call(element, other)
export const first = <E extends Element = Element>(element: Element, selector: string): E | null =>
  Element.prototype.querySelector.call(element, selector) as E | null
export const all = <E extends Element = HTMLElement>(element: Element, selector: string): E[] => [
  ...(Element.prototype.querySelectorAll.call(element, selector) as NodeListOf<E>),
]

/** Whether it stands in a document. Firefox lets nobody touch what stood in a frame that was taken away: asking throws. */
export function alive(node: Node): boolean {
  try {
    return node.isConnected
  } catch {
    return false
  }
}

/** Whether the element holds at least two that fit; stops at the second, for a page may hold any number. */
export function holdsSeveral(element: Element, selector: string): boolean {
  const walker = own(element, 'ownerDocument').createTreeWalker(element, NodeFilter.SHOW_ELEMENT)
  for (let count = 0; walker.nextNode();) {
    if (is(walker.currentNode as Element, selector)) count += 1
    if (count > 1) return true
  }
  return false
}

/** The element of that id in a document or shadow root; what was taken out of the page has none around it. */
export const byId = (root: Node, id: string): HTMLElement | null =>
  id && 'getElementById' in root ? (root as Document).getElementById(id) : null
