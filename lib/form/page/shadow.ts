/** Shadow roots, closed ones too. */
import { own } from './dom.ts'

/** Ways into a closed root that browsers give to extensions only: Chromium by a function, Firefox by a property. */
interface RootOpener {
  dom?: { openOrClosedShadowRoot?: (element: Element) => ShadowRoot | null }
}

export function rootOf(element: Element & { openOrClosedShadowRoot?: ShadowRoot | null }): ShadowRoot | null {
  const open = own(element, 'shadowRoot')
  if (open) return open
  if (!own(element, 'localName').includes('-')) return null
  const { chrome } = globalThis as { chrome?: RootOpener }
  try {
    return element.openOrClosedShadowRoot ?? chrome?.dom?.openOrClosedShadowRoot?.(element) ?? null
  } catch {
    // The function throws for elements that cannot have a root.
    return null
  }
}

/** A document or shadow root and all roots in it, the helper's own left out. */
export function rootsIn(root: Document | ShadowRoot): (Document | ShadowRoot)[] {
  const roots: (Document | ShadowRoot)[] = [root]
  for (const each of root.querySelectorAll('*')) {
    const name = own(each, 'localName')
    const shadow = name.startsWith('gapsum-') ? null : rootOf(each)
    if (shadow) roots.push(...rootsIn(shadow))
  }
  return roots
}
