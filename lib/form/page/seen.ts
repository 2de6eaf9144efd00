/** Whether a person can see a control at this moment: not merely displayed, but drawn where one can scroll to, uncovered. */
import { say } from '../../words/say.ts'
import { faceOf, lookOf, typed } from './face.ts'
import { lifted, opaque, shareOf, sheeted, unreadable } from './covers.ts'
import { all, holds, is, own } from './dom.ts'
import { labelsOf } from './labels.ts'
import { rootOf } from './shadow.ts'
import { hiddenBecause, parentOf } from './visible.ts'
import { ownHosts } from './own-host.ts'

interface Place {
  x: number
  y: number
}

/** Product of the opacities from the element up; below this share nobody makes anything out. */
const faint = 0.1

/** The element's box and what is around it, in and out of shadow roots and frames of this origin. */
function* around(element: Element): Generator<Element> {
  for (let at: Element | null = element; at;) {
    yield at
    at = parentOf(at) ?? own(at, 'ownerDocument').defaultView?.frameElement ?? null
  }
}

function opacityOf(element: Element, of: (style: CSSStyleDeclaration) => number): number {
  let share = 1
  for (const at of around(element)) share *= of(getComputedStyle(at))
  return share
}

/** Whether the element hides what lies under it; a filter or a mask of its own excuses none of it. */
const covers = (element: Element): boolean =>
  opaque(
    element,
    opacityOf(element, ({ opacity }) => Number(opacity)),
  )

/**
 * Whether something in the shadow root of an element that is met there hides what lies under it. `above`: the control and
 * what is around it, as the slots have it; that lies under it, unless something is drawn lifted out of it.
 */
function coversWithin(element: Element, x: number, y: number, above: ReadonlySet<Element>): boolean {
  const root = rootOf(element)
  const met = root
    ?.elementsFromPoint(x, y)
    .filter((each) => Node.prototype.getRootNode.call(each) === root && !ownHosts.has(each))
    .filter((each) => !above.has(each) || lifted(each).length > 0)
  return met?.some((each) => covers(each) || coversWithin(each, x, y, above)) ?? false
}

/** Whether the helper itself is met there in the shadow root of an element, which is then met only in its place. */
function ownWithin(element: Element, x: number, y: number): boolean {
  const root = rootOf(element)
  const met = root?.elementsFromPoint(x, y).filter((each) => Node.prototype.getRootNode.call(each) === root)
  return met?.some((each) => ownHosts.has(each) || ownWithin(each, x, y)) ?? false
}

/** Whether the element, or what stands for it, is what one sees at the place. */
function showsAt(element: Element, faces: readonly Element[], { x, y }: Place): boolean {
  const root = element.getRootNode() as Document | ShadowRoot
  const above = new Set(around(element))
  for (const at of root.elementsFromPoint(x, y)) {
    if (ownHosts.has(at)) continue
    if (faces.some((face) => face === at || holds(face, at))) return true
    // Something around the element is met before the element itself: here it is cut off, unless what is met is a thin
    // layer that the page draws around its content.
    if (covers(at) || coversWithin(at, x, y, above)) return false
    if (holds(at, element) && lifted(at).length === 0 && !ownWithin(at, x, y)) return false
  }
  return false
}

function insideFrames(element: Element, faces: readonly Element[], place: Place): boolean {
  if (!showsAt(element, faces, place)) return false
  // From outside the shadow root another sheet may lie over it.
  const root = Node.prototype.getRootNode.call(element)
  if ('host' in root) return insideFrames(root.host as Element, [root.host as Element], place)
  const frame = element.ownerDocument.defaultView?.frameElement
  if (!frame) return true
  const { left, top } = frame.getBoundingClientRect()
  return insideFrames(frame, [frame], {
    x: place.x + left + frame.clientLeft,
    y: place.y + top + frame.clientTop,
  })
}

/** Whether at least half of the places over the box show the element; those outside the window say nothing. */
function shows(element: Element, faces: readonly Element[], face: Element): boolean {
  const box = face.getBoundingClientRect()
  const { innerWidth = 0, innerHeight = 0 } = element.ownerDocument.defaultView ?? {}
  const shares = [1 / 6, 1 / 2, 5 / 6]
  const places = shares
    .flatMap((across) => shares.map((down) => ({ x: box.left + box.width * across, y: box.top + box.height * down })))
    .filter(({ x, y }) => x >= 0 && y >= 0 && x < innerWidth && y < innerHeight)
  return places.length >= 3 && 2 * places.filter((place) => insideFrames(element, faces, place)).length >= places.length
}

const scroll = (element: Element, to: ScrollToOptions): void => Reflect.apply(Element.prototype.scrollTo, element, [to])

/** Nobody scrolls a page sideways further than this, or than its window is wide, for a control; px. */
const sideways = 1600

/** Scrolls to the element as far as a hand would, and gives back a way to scroll back. */
function scrollTo(element: Element): () => void {
  const before = [...around(element)].map((at) => ({ at, left: own(at, 'scrollLeft'), top: own(at, 'scrollTop') }))
  element.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' })
  const back = ({ at, left, top }: (typeof before)[number]) => scroll(at, { left, top, behavior: 'instant' })
  for (const one of before) {
    const { at, left, top } = one
    if (own(at, 'scrollLeft') === left && own(at, 'scrollTop') === top) continue
    const { documentElement, body } = own(at, 'ownerDocument')
    // What the body says of overflow holds for the window, unless the root says something itself.
    const styles = [at, ...(at === documentElement ? [body] : [])].map((each) => getComputedStyle(each))
    const { overflowX, overflowY } = styles.find((style) => style.overflow !== 'visible') ?? styles[0]!
    const far = at === documentElement && Math.abs(own(at, 'scrollLeft') - left) > Math.max(innerWidth, sideways)
    scroll(at, {
      ...((overflowX === 'hidden' || far) && { left }),
      ...(overflowY === 'hidden' && { top }),
      behavior: 'instant',
    })
  }
  return () => before.forEach(back)
}

/** What tells whether an inert element stays as it was. */
function lookOfInert(element: Element) {
  const box = element.getBoundingClientRect()
  const { visibility, backgroundColor, opacity, display } = getComputedStyle(element)
  const places = [element, ...all(element, '*').slice(0, 50)].map((each) => {
    const { x, y, width, height } = each.getBoundingClientRect()
    return [x, y, width, height].join()
  })
  const style = [visibility, backgroundColor, opacity, display, ...places].join(' ')
  return { box, style, seen: covers(element) }
}

const meets = (one: DOMRect, other: DOMRect): boolean =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom

/** Lets the pointer meet what it would pass through: such a thing covers as well as any other. */
function meetAll(element: Element): { moved: readonly DOMRect[]; part: () => void } {
  const moved: DOMRect[] = []
  const documents = new Set([...around(element)].map((at) => own(at, 'ownerDocument')))
  const undo: (() => void)[] = []
  for (const document of documents) {
    // What is inert is drawn and not met; what is around the element itself stays so. Where it changes at that, as the
    // page may have it do, it counts as lying where it lay.
    const still = [...document.querySelectorAll('[inert]')].filter((each) => !holds(each, element))
    const before = still.map(lookOfInert)
    for (const each of still) {
      const turn = () => Element.prototype.toggleAttribute.call(each, 'inert')
      turn()
      undo.push(turn)
    }
    for (const [at, each] of still.entries()) {
      const [was, now] = [before[at]!, lookOfInert(each)]
      if (was.style !== now.style && was.seen) moved.push(was.box)
    }
    const View = document.defaultView as (Window & typeof globalThis) | null
    try {
      const sheet = View && new View.CSSStyleSheet()
      if (!sheet) continue
      sheet.replaceSync('*{pointer-events:auto!important;interactivity:auto!important}')
      document.adoptedStyleSheets.push(sheet)
      undo.push(() => document.adoptedStyleSheets.splice(document.adoptedStyleSheets.indexOf(sheet), 1))
    } catch {
      // A browser that keeps these sheets from extensions tests without.
    }
  }
  return {
    moved,
    part: () => {
      for (const each of undo) each()
    },
  }
}

const drawnApart = 'input[type=checkbox], input[type=radio], input[type=range], input[type=file], select, [role]'

/** Whether the face is seen, where it is or where it can be scrolled to. The page is left scrolled as it was. */
function shown(element: HTMLElement, face: Element): boolean {
  // A label may stand for what it names only where that is not drawn itself.
  const labels = face === element && !is(element, drawnApart) ? [] : labelsOf(element)
  const faces = [element, face, ...labels]
  if (shows(element, faces, face)) return true
  const back = scrollTo(face)
  try {
    return shows(element, faces, face)
  } finally {
    back()
  }
}

/** Why a person cannot see this element now, or nothing when they can. */
function unseen(element: HTMLElement): string | undefined {
  const face = faceOf(element)
  if (!face) return hiddenBecause(element) ?? say`not displayed`
  const visible = [face, lookOf(element)].filter((each) => each && opacityOf(each, shareOf) >= faint)
  if (visible.length === 0 || (visible[0] === element && unreadable(element))) return say`transparent`
  if (!is(element, ':popover-open *, :modal *') && sheeted(element.ownerDocument))
    return say`covered, cut off or out of reach`
  const { moved, part } = meetAll(element)
  try {
    const box = face.getBoundingClientRect()
    if (moved.some((each) => meets(each, box))) return say`covered, cut off or out of reach`
    // What is typed into lies under its label, and shows in its own place once it has the focus.
    const place = is(element, typed) ? element : undefined
    return visible.some((each) => each && shown(element, place ?? each))
      ? undefined
      : say`covered, cut off or out of reach`
  } finally {
    part()
  }
}

/** Why a person cannot see one of the elements of a control. */
export function unseenBecause(elements: readonly HTMLElement[]): string | undefined {
  for (const element of elements) {
    const why = unseen(element)
    if (why !== undefined) return why
  }
  return undefined
}
