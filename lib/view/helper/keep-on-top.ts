/** The helper's place above the page. */

/** How often in a second the host is put back at once; a page that throws it out more often waits for the next second. */
const often = 20

/**
 * Keeps the helper's host above the page and within reach: in the top layer, above what opens there later, inside an
 * open modal dialog (the rest of the document is inert then), put back when the page throws it out or puts its whole
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
    const home = [...document.querySelectorAll('dialog:modal')].at(-1) ?? document.documentElement
    const placed = host.parentElement === home
    if (placed && host.matches(':popover-open')) return
    if (!mayAct()) return
    if (!placed) home.append(host)
    if (!host.matches(':popover-open')) host.showPopover()
  }
  settle()

  const observer = new MutationObserver(settle)
  observer.observe(document, { childList: true, subtree: true, attributes: true, attributeFilter: ['open'] })
  signal.addEventListener('abort', () => observer.disconnect())

  // What is opened last lies on top, and may lie over the helper unseen.
  document.addEventListener(
    'toggle',
    (event) => {
      if (event.target === host) return settle()
      if (!(event.target as Element).matches(':popover-open') || !mayAct()) return
      host.hidePopover()
      host.showPopover()
    },
    { capture: true, signal },
  )

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
