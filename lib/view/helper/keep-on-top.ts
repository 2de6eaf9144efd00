/** The helper's place above the page. */

/** How often in a second the host is put back at once; a page that throws it out more often waits for the next second. */
const often = 20

/** The documents and shadow roots of the page, as they were last walked. */
let roots: readonly Node[] = []
let hear: (() => void) | undefined

/** Takes what was walked: a dialog or popover inside a shadow root tells nobody outside of it. */
export function tellRoots(walked: readonly Node[]): void {
  roots = walked
  hear?.()
}

/** The page itself and its shadow roots; a frame has a top layer of its own. */
const ofPage = () =>
  [document, ...roots.filter((node) => node.ownerDocument === document && node.isConnected)] as Document[]

/**
 * Keeps the helper's host above the page and within reach: in the top layer, above what opens there later, inside an
 * open modal dialog (the rest of the document is inert then) also where that stands in a shadow root, put back when the page throws it out or puts its whole
 * document in anew, and untouched by focus traps.
 */
export function keepOnTop(host: HTMLElement, signal: AbortSignal): void {
  host.popover = 'manual'
  let acts = 0
  let waiting = false

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
      }, 1000)
    }
    return false
  }

  const settle = () => {
    if (signal.aborted || !document.documentElement) return
    let home = document.documentElement
    for (const node of ofPage()) home = [...node.querySelectorAll<HTMLElement>('dialog:modal')].at(-1) ?? home
    const placed = host.parentElement === home
    if (placed && host.matches(':popover-open')) return
    if (!mayAct()) return
    if (!placed) home.append(host)
    if (!host.matches(':popover-open')) host.showPopover()
  }

  const observer = new MutationObserver(settle)
  const raise = () => {
    host.hidePopover()
    host.showPopover()
  }
  // What is opened last lies on top, and may lie over the helper unseen.
  const toggled = (event: Event) => {
    if (event.target === host) settle()
    else if ((event.target as Element).matches(':popover-open') && mayAct()) raise()
  }
  const watched = new WeakSet<Node>()
  const watch = () => {
    for (const node of ofPage()) {
      if (watched.has(node)) continue
      watched.add(node)
      observer.observe(node, { childList: true, subtree: true, attributes: true, attributeFilter: ['open'] })
      node.addEventListener('toggle', toggled, { capture: true, signal })
      // What was opened in it before it was known lies above.
      if (node !== document && node.querySelector(':popover-open') && mayAct()) raise()
    }
    settle()
  }
  watch()
  hear = watch
  signal.addEventListener('abort', () => {
    if (hear === watch) hear = undefined
    observer.disconnect()
  })

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
}
