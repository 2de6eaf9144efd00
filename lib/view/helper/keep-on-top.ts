/** The helper's place above the page. */
import { own } from '../../form/page/dom.ts'

/**
 * How often in a second the host is put back at once; a page that throws it out more often waits for the next second. Each
 * time its frame may have to be loaded anew.
 */
const often = 6

/** So long the helper must have lain on top before it is held to have been seen, in ms: nobody reads and presses in less. */
const rest = 500

/** What lies in the top layer, where the helper is. */
const above = ':popover-open, dialog:modal, :fullscreen'

/** Attributes by which a page could take the host out of reach. */
const harmful = ['inert', 'hidden', 'style', 'class', 'slot', 'aria-hidden']

export interface OnTop {
  /** Takes the documents and shadow roots of the page: dialogs and popovers inside shadow roots tell nobody outside. */
  know: (roots: readonly Node[]) => void
  /** Brings the helper above everything that is open now; where nothing else is, nothing is done: it takes the keyboard. */
  raise: () => void
  /** Whether something lies above the helper, did so a moment ago, or meets the pointer in its place. */
  covered: (roots: readonly Node[]) => boolean
}

interface Kept {
  host: HTMLElement
  root: ShadowRoot
  frame: HTMLElement
}

type Movable = Element & { moveBefore?: (node: Node, before: Node | null) => void }

/** Moves the host without loading its frame anew, where the browser can. */
function move(home: Movable, host: HTMLElement): void {
  try {
    if (host.isConnected && home.moveBefore) return home.moveBefore(host, null)
  } catch {
    // Between two documents it cannot.
  }
  home.append(host)
}

/** What fits in these documents and shadow roots, as far as it lies in the page itself: a frame has its own top layer. */
const open = (within: readonly Node[], selector: string): Element[] =>
  within.flatMap((node) => {
    const outside = node.ownerDocument ? node.ownerDocument !== document : node !== document
    return outside || !node.isConnected ? [] : [...(node as Document).querySelectorAll(selector)]
  })

/**
 * Keeps the helper's host above the page and within reach: in the top layer, above what opens there later, inside an
 * open modal dialog (the rest of the document is inert then) also where that stands in a shadow root, put back when the
 * page throws it out or puts its whole document in anew, and untouched by focus traps.
 */
export function keepOnTop({ host, root, frame }: Kept, signal: AbortSignal): OnTop {
  host.popover = 'manual'
  let acts = 0
  let waiting = false
  let roots: readonly Node[] = [document]
  let below = new WeakSet<Element>()
  /** When something was last opened above. */
  let roseAt = Number.NEGATIVE_INFINITY

  /** A page that undoes each act at once would keep itself and the helper busy for ever. */
  const mayAct = (): boolean => {
    acts += 1
    if (acts === 1) setTimeout(() => (acts = 0), 1000)
    if (acts <= often) return true
    if (!waiting) {
      waiting = true
      setTimeout(() => {
        waiting = false
        settle()
        // What was opened meanwhile lies above.
        if (risen() && mayAct()) raise()
      }, 1000)
    }
    return false
  }

  const others = (within: readonly Node[]) => open(within, above).filter((one) => one !== host)

  /** Whether something that was opened later lies above. */
  const risen = (within = roots) => {
    const some = others(within).some((one) => !below.has(one))
    if (some) roseAt = performance.now()
    return some
  }

  const raise = () => {
    const focused = root.activeElement === frame
    host.hidePopover()
    host.showPopover()
    if (focused) frame.focus({ preventScroll: true })
    below = new WeakSet(open(roots, above))
  }

  const settle = () => {
    if (signal.aborted || !document.documentElement) return
    const home = open(roots, 'dialog:modal').at(-1) ?? document.documentElement
    const placed = own(host, 'parentElement') === home
    const hurt = harmful.filter((name) => host.hasAttribute(name))
    const shown = host.matches(':popover-open')
    if (placed && shown && hurt.length === 0 && host.popover === 'manual') return
    if (!mayAct()) return
    for (const name of hurt) host.removeAttribute(name)
    if (host.popover !== 'manual') host.popover = 'manual'
    const focused = root.activeElement === frame
    if (!placed) {
      move(home, host)
      // Moved while it is shown it would stay below what it was moved into.
      if (host.matches(':popover-open')) host.hidePopover()
    }
    if (!host.matches(':popover-open')) {
      host.showPopover()
      below = new WeakSet(open(roots, above))
    }
    if (focused) frame.focus({ preventScroll: true })
  }

  const observer = new MutationObserver(settle)
  // What is opened last lies on top, and may lie over the helper unseen.
  const toggled = (event: Event) => {
    if (event.target === host) return settle()
    if (!(event.target as Element).matches(':popover-open')) return
    roseAt = performance.now()
    if (mayAct()) raise()
  }
  const known = new WeakSet<Node>()
  const watch = (node: Node) => {
    if (known.has(node)) return
    known.add(node)
    observer.observe(node, { childList: true, subtree: true, attributes: true, attributeFilter: ['open', ...harmful] })
    node.addEventListener('toggle', toggled, { capture: true, signal })
  }
  watch(document)
  settle()
  signal.addEventListener('abort', () => observer.disconnect())

  // Page scripts that pull the focus back into their own dialog listen to these two; the dock itself does not.
  for (const type of ['focusin', 'focusout']) {
    window.addEventListener(
      type,
      (event) => {
        if (event.composedPath().includes(host)) event.stopImmediatePropagation()
      },
      { capture: true, signal },
    )
  }

  const parts = [0.01, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99]
  return {
    know: (now) => {
      roots = now
      for (const node of now) if (node.ownerDocument === document) watch(node)
      settle()
      // What was opened in a root before that was known lies above.
      if (risen() && mayAct()) raise()
    },
    raise: () => {
      if (!signal.aborted && host.isConnected && others(roots).some((one) => !one.contains(host)) && mayAct()) raise()
    },
    covered: (now) => {
      const { left, top, width, height } = frame.getBoundingClientRect()
      const met = parts.every((x) =>
        parts.every((y) => root.elementFromPoint(left + width * x, top + height * y) === frame),
      )
      return !met || risen(now) || (now.length > 0 && performance.now() - roseAt < rest)
    },
  }
}
