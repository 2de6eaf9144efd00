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
  for (const target of event.composedPath()) {
    // Not `instanceof`: elements of a frame have classes of their own.
    if (!('nodeType' in target) || target.nodeType !== Node.ELEMENT_NODE) continue
    const element = target as Element
    const labelled = element.localName === 'label' ? (element as HTMLLabelElement).control : null
    const key = keyOf(element) ?? (labelled ? keyOf(labelled) : undefined)
    if (key !== undefined) return key
  }
  return undefined
}

export interface Picking {
  host: HTMLElement
  /** The windows that hold controls: the page's own and those of its frames. */
  windows: readonly Window[]
  /** The key of the control that this element is (part of). */
  keyOf: (element: Element) => string | undefined
  onHover: (key: string | undefined) => void
  onPick: (key: string) => void
}

/** Picking controls by pointer until the signal aborts. Only acts of the person count; elsewhere the page works as always. */
export function pickIn({ host, windows, keyOf, onHover, onPick }: Picking, signal: AbortSignal): void {
  const options = { capture: true, passive: false, signal }
  const at = (event: Event) =>
    event.isTrusted && !event.composedPath().includes(host) ? controlAt(event, keyOf) : undefined
  const swallow = (event: Event) => {
    const key = at(event)
    if (key === undefined) return
    // A touch whose start is prevented never becomes a click.
    if (!event.type.startsWith('touch')) event.preventDefault()
    event.stopImmediatePropagation()
    if (event.type === 'click') onPick(key)
  }
  for (const view of windows) {
    view.addEventListener('pointerover', (event) => onHover(at(event)), options)
    for (const type of swallowed) view.addEventListener(type, swallow, options)
  }
}
