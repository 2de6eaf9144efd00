/**
 * Keeps the helper's host above the page and within reach: in the top layer, inside an open modal dialog (the rest of
 * the document is inert then), put back when the page throws it out, and untouched by focus traps.
 */
export function keepOnTop(host: HTMLElement, signal: AbortSignal): void {
  host.popover = 'manual'

  const settle = () => {
    if (signal.aborted) return
    const home = [...document.querySelectorAll('dialog:modal')].at(-1) ?? document.documentElement
    if (host.parentElement !== home) home.append(host)
    if (!host.matches(':popover-open')) host.showPopover()
  }
  settle()

  const observer = new MutationObserver(settle)
  observer.observe(document.documentElement, {
    childList: true,
    subtree: true,
    attributes: true,
    attributeFilter: ['open'],
  })
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
}
