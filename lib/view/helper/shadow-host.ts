import { ownHosts } from '../../form/own-host.ts'

/** What happens in the dock is not the page's business: keys, presses, edits. */

const own =
  'keydown keyup keypress beforeinput input change paste copy cut submit click dblclick pointerdown pointerup mousedown mouseup focusin focusout'

export interface ShadowHost {
  host: HTMLElement
  root: ShadowRoot
  /** Where the interface is drawn. */
  container: HTMLElement
}

/** The helper's place in the page: a host with a closed shadow root, which the page can neither read nor style. */
export function shadowHost(css: string, signal: AbortSignal): ShadowHost {
  const host = document.createElement('gapsum-helper')
  ownHosts.add(host)
  const root = host.attachShadow({ mode: 'closed' })
  const style = document.createElement('style')
  // What the styles say of a host is said of what stands in it, which no style of the page reaches: theme and colours.
  // The page's font size must not scale the dock: `rem` becomes the browser's own default size.
  style.textContent = `:host{all:initial!important}${css
    .replaceAll(/:host(?:\((\[[^\]]+\]|:not\([^)]+\))\))?/g, ':host>*$1')
    .replaceAll(/(-?[\d.]+)rem\b/g, 'calc($1*var(--rem))')}`
  const container = document.createElement('div')
  root.append(style, container)
  for (const type of own.split(' ')) {
    // Only what a person does counts, whatever way a page may find to send events in here. An edit alone does nothing.
    if (!/input|change/.test(type))
      root.addEventListener(type, (event) => event.isTrusted || event.stopImmediatePropagation(), {
        capture: true,
        signal,
      })
    root.addEventListener(type, (event) => event.stopPropagation(), { signal })
  }
  document.documentElement.append(host)
  host.style.setProperty('--rem', getComputedStyle(host).fontSize)
  signal.addEventListener('abort', () => host.remove())
  return { host, root, container }
}
