import { useEffect } from 'preact/hooks'

/** Everything between pressing and releasing, so that the page's control neither opens, toggles nor takes the focus. */
const swallowed = [
  'pointerdown',
  'mousedown',
  'touchstart',
  'touchend',
  'pointerup',
  'mouseup',
  'click',
  'dblclick',
  'auxclick',
]

/** The control that an event is about: the first of its path, or the control of a label in it. */
function controlAt(event: Event, keyOf: (element: Element) => string | undefined): string | undefined {
  for (const node of event.composedPath()) {
    if (!(node instanceof Element)) continue
    const key = keyOf(node) ?? (node instanceof HTMLLabelElement && node.control ? keyOf(node.control) : undefined)
    if (key !== undefined) return key
  }
  return undefined
}

interface Pick {
  host: HTMLElement
  /** The key of the control that this element is (part of). */
  keyOf: (element: Element) => string | undefined
  onHover: (key: string | undefined) => void
  onPick: (key: string) => void
}

/** Picking controls on the page by pointer. Only acts of the person count; elsewhere the page works as always. */
export function usePick({ host, keyOf, onHover, onPick }: Pick): void {
  useEffect(() => {
    const life = new AbortController()
    const options = { capture: true, passive: false, signal: life.signal }
    const at = (event: Event) =>
      event.isTrusted && !event.composedPath().includes(host) ? controlAt(event, keyOf) : undefined

    window.addEventListener('pointerover', (event) => onHover(at(event)), options)
    for (const type of swallowed) {
      window.addEventListener(
        type,
        (event) => {
          const key = at(event)
          if (key === undefined) return
          // A touch whose start is prevented never becomes a click.
          if (!type.startsWith('touch')) event.preventDefault()
          event.stopImmediatePropagation()
          if (type === 'click') onPick(key)
        },
        options,
      )
    }
    return () => life.abort()
  }, [host, keyOf, onHover, onPick])
}
