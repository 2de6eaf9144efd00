/** Lists and calendars that a control opens, wherever in the document they stand. */
import { tidy } from '../../words.ts'
import { textIn } from '../../page/names.ts'
import { holds, upward } from '../../page/dom.ts'
import { flatAll } from '../../page/flat.ts'
import { rootsIn } from '../../page/shadow.ts'
import { hiddenBecause, parentOf } from '../../page/visible.ts'

const roles = '[role=listbox], [role=tree], [role=menu], [role=grid], [role=dialog], [popover]'

/** Everything in the roots that carries a role of something that opens. */
const opening = (roots: readonly (Document | ShadowRoot)[]): Element[] =>
  roots.flatMap((root) => Array.from(root.querySelectorAll(roles)))

const seen = (element: Element): boolean => !hiddenBecause(element)

/** The nearest element around a hidden one that shows something and does not hold the control. */
function shownAround(element: Element, control: Element): Element | undefined {
  for (let at: Element | null = element; at && !holds(at, control); at = upward(at)) {
    const box = at.getBoundingClientRect()
    if (seen(at) && box.height > 8 && box.width > 8) return at
  }
  return undefined
}

export interface Watch {
  /** What has opened since: what the control points to first, then what carries a role, then whatever appeared. */
  opened(): Element[]
  stop(): void
}

/** Begins to watch for what a control opens. Call before it is opened. */
export function watchPopup(control: HTMLElement): Watch {
  // Lists of components stand in roots of their own, some of which are made when the list opens.
  let roots = rootsIn(control.ownerDocument)
  let found = performance.now()
  const before = new Set(opening(roots).filter(seen))
  const surrounding = new Set<Element>()
  for (let at: Element | null = control; at; at = parentOf(at)) surrounding.add(at)
  const added = new Set<Element>()
  const observer = new MutationObserver((records) => {
    for (const { type, target, addedNodes } of records) {
      if (type === 'attributes') added.add(target as Element)
      for (const node of addedNodes) if (node.nodeType === Node.ELEMENT_NODE) added.add(node as Element)
    }
  })
  const watched = new Set<Node>()
  const watch = (): void => {
    for (const root of roots.filter((each) => !watched.has(each))) {
      watched.add(root)
      observer.observe(root, {
        subtree: true,
        childList: true,
        attributes: true,
        attributeFilter: ['style', 'class', 'hidden', 'open'],
      })
    }
  }
  watch()
  return {
    opened() {
      if (performance.now() - found > 100) {
        roots = rootsIn(control.ownerDocument)
        found = performance.now()
        watch()
      }
      const ids = [control, ...control.querySelectorAll('[aria-controls], [aria-owns]')]
        .flatMap((each) => [each.getAttribute('aria-controls'), each.getAttribute('aria-owns')])
        .flatMap((value) => value?.split(/\s+/) ?? [])
      const pointed = ids
        .map((id) => id && roots.map((root) => root.querySelector(`#${CSS.escape(id)}`)).find(Boolean))
        .flatMap((each) => (each ? (shownAround(each, control) ?? []) : []))
      const withRole = opening(roots).filter((each) => !before.has(each) && !surrounding.has(each) && seen(each))
      const fresh = [...added].filter(
        (each) => each.isConnected && !surrounding.has(each) && !control.contains(each) && seen(each),
      )
      const outermost = fresh.filter((each) => !fresh.some((other) => other !== each && other.contains(each)))
      return [...new Set([...pointed, ...withRole, ...outermost])]
    },
    stop: () => observer.disconnect(),
  }
}

export interface Choice {
  element: HTMLElement
  label: string
}

const optionRoles = '[role=option], [role=treeitem], [role=menuitemradio], [role=menuitem]'

/** The choices that an open list shows now. */
export function choicesIn(popup: Element): Choice[] {
  const listed = (selector: string) => flatAll(popup, selector).filter(seen)
  let elements = listed(optionRoles)
  if (elements.length === 0) elements = listed('li')
  if (elements.length === 0) elements = listed(':not(slot)').filter((each) => flatAll(each, ':not(slot)').length === 0)
  return elements
    .map((element) => ({ element, label: tidy(textIn(element)) || tidy(element.getAttribute('aria-label') ?? '') }))
    .filter(({ label }) => label !== '')
}

/** Parts of an open list that scroll. */
export function scrollers(popup: Element): Element[] {
  return [popup, ...flatAll(popup, '*')].filter(
    (each) =>
      each.scrollHeight > each.clientHeight + 4 &&
      each.clientHeight > 20 &&
      getComputedStyle(each).overflowY !== 'visible',
  )
}
