/** Hearing a page draw itself anew: its document, the shadow roots in it, and the frames that it can look into. */
import { own } from './dom.ts'

/**
 * Hears changes until the signal aborts.
 * @param filter the attributes that count; all if left out, and texts too
 * @returns what watches roots besides those that are watched already
 */
export function watchRoots(
  hear: () => void,
  signal: AbortSignal,
  filter?: readonly string[],
): (roots: readonly Node[]) => void {
  const observer = new MutationObserver(hear)
  const all = filter ? { attributeFilter: [...filter] } : { characterData: true }
  // What a frame loads is a document that nobody watches yet.
  const loaded = ({ target }: Event) => /^i?frame$/.test(own(target as Element, 'localName')) && hear()
  signal.addEventListener('abort', () => observer.disconnect())
  return (roots) => {
    for (const root of roots) {
      observer.observe(root, { subtree: true, childList: true, attributes: true, ...all })
      root.addEventListener('load', loaded, { capture: true, signal })
    }
  }
}
