/**
 * Which targets are smaller than a gloved finger wants. Source: WCAG 2.2, 2.5.5 Target Size (Enhanced): 44 by 44 CSS
 * pixels, except a link within a sentence, and a target whose place is given by what it shows, as a point of a plot.
 */

// The function is sent into the page as text, so all that it calls stands inside it.
/* oxlint-disable unicorn/consistent-function-scoping */
/**
 * The sentences of what is too small in the page, shadow roots included; `own`: only in elements of that name. Runs in
 * the page, with a coarse pointer.
 */
export function tooSmallIn(own = ''): string[] {
  const least = 44
  const found: string[] = []
  const pressed =
    'button, summary, select, textarea, a[href], input:not([type=hidden]), [role=button], [role=option], [role=tab]'
  /** What takes the press: the element, the label around it, and what is laid over its row for it. */
  const boxes = (one: HTMLElement): DOMRect[] => {
    const labels = one instanceof HTMLInputElement ? [...(one.labels ?? [])] : []
    const over = getComputedStyle(one, '::after')
    const row = over.content !== 'none' && over.position === 'absolute' ? one.offsetParent : null
    return [one, ...labels, ...(row ? [row] : [])].map((each) => each.getBoundingClientRect())
  }
  /** A link with words of its sentence beside it, in the same block. */
  const inSentence = (one: HTMLElement) =>
    one.matches('a') &&
    getComputedStyle(one).display === 'inline' &&
    [...(one.parentElement?.childNodes ?? [])].some(
      (beside) => beside !== one && beside.nodeType === Node.TEXT_NODE && (beside.textContent ?? '').trim() !== '',
    )
  const look = (root: Document | ShadowRoot) => {
    for (const one of root.querySelectorAll<HTMLElement>(root === document ? own || '*' : '*')) {
      if (one.shadowRoot) look(one.shadowRoot)
      if (root === document && own !== '') continue
      if (!one.matches(pressed) || !one.checkVisibility({ visibilityProperty: true }) || inSentence(one)) continue
      // What only assistive technology sees is pressed by its label.
      const all = boxes(one).filter(({ width, height }) => width > 1 && height > 1)
      if (all.length === 0) continue
      const width = Math.max(...all.map((box) => box.width))
      const height = Math.max(...all.map((box) => box.height))
      if (width >= least - 0.5 && height >= least - 0.5) continue
      const words = (one.ariaLabel ?? one.innerText ?? '').trim().slice(0, 40)
      found.push(
        `${Math.round(width)} by ${Math.round(height)} px: ${one.localName}.${one.className} in ${one.parentElement?.className} "${words}"`,
      )
    }
  }
  look(document)
  return [...new Set(found)]
}
