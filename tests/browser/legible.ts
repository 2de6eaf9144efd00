/** Text that is cut off, broken inside a word, or lies over other text, measured by the boxes that the browser drew. */

// The function is sent into the page as text, so all that it calls stands inside it.
/* oxlint-disable unicorn/consistent-function-scoping */
/** A sentence for each text that cannot be read whole, in a document or the tree below `start`. Runs in the page. */
export function illegible(start: Document | Element = document): string[] {
  const found: string[] = []
  const spoken = (text: string) => JSON.stringify(text.trim().replaceAll(/\s+/g, ' ').slice(0, 60))
  const range = document.createRange()
  interface Text {
    words: string
    holder: Element
    boxes: DOMRect[]
    /** What it stays on screen with, over what scrolls below it. */
    layer: Element | undefined
  }
  const texts: Text[] = []
  const marks: { box: DOMRect; holder: Element }[] = []

  const up = (one: Element): Element | null => {
    const root = one.getRootNode()
    return one.assignedSlot ?? one.parentElement ?? (root instanceof ShadowRoot ? root.host : null)
  }
  const above = function* (one: Element) {
    for (let at: Element | null = one; at; at = up(at)) yield at
  }
  const unseen = (one: Element) =>
    !one.checkVisibility({ visibilityProperty: true, opacityProperty: true }) ||
    [...above(one)].some((at) => at.matches('.vh, [hidden], option, datalist, script, style, title, template'))
  const clips = (value: string) => value === 'hidden' || value === 'clip'
  const scrolls = (value: string) => value === 'auto' || value === 'scroll'

  /** How far a box reaches past what cuts it: nothing where a person can scroll to it. */
  const cutBy = (box: DOMRect, holder: Element): string => {
    for (const at of above(holder)) {
      if (at === document.documentElement || at === document.body) break
      const style = getComputedStyle(at)
      const edge = at.getBoundingClientRect()
      if (style.display === 'inline' || style.display === 'contents') continue
      if (scrolls(style.overflowX) && at.scrollWidth > at.clientWidth && at.querySelector('table')) return ''
      const past = Math.max(edge.left - box.left, box.right - edge.right)
      if (clips(style.overflowX) && past > 1) return `${Math.round(past)} px of it are cut off by its ${at.localName}`
      const below = Math.max(edge.top - box.top, box.bottom - edge.bottom)
      if (clips(style.overflowY) && below > 3) return `${Math.round(below)} px of its height are cut off`
      if (style.position === 'fixed') break
    }
    const wide = document.documentElement.clientWidth
    if (box.right > wide + 1 || box.left < -1)
      return `it stands from ${Math.round(box.left)} to ${Math.round(box.right)} of ${wide} px`
    return ''
  }

  const layerOf = (one: Element) =>
    [...above(one)].find((at) => {
      const { position, backgroundColor } = getComputedStyle(at)
      return /sticky|fixed/.test(position) || (position === 'absolute' && backgroundColor !== 'rgba(0, 0, 0, 0)')
    })

  const ofText = (node: globalThis.Text, holder: Element) => {
    const words = node.data
    if (words.trim() === '' || unseen(holder)) return
    range.selectNodeContents(node)
    const boxes = [...range.getClientRects()].filter(({ width, height }) => width > 1 && height > 1)
    if (boxes.length === 0) return
    texts.push({ words, holder, boxes, layer: layerOf(holder) })
    const cut = boxes.map((box) => cutBy(box, holder)).find(Boolean)
    if (cut) found.push(`${spoken(words)}: ${cut}`)
    if (holder instanceof SVGElement) return
    // Fingerprints and addresses of pages have no place of their own to break at.
    for (const { 0: word, index } of words.matchAll(/[\p{L}\p{N}][\p{L}\p{N}\p{M}.,'’]*/gu)) {
      if (word.length > 24) continue
      range.setStart(node, index)
      range.setEnd(node, index + word.replace(/[.,]$/, '').length)
      const lines = [...range.getClientRects()].filter(({ width }) => width > 0.5)
      const [first, last] = [lines[0], lines.at(-1)]
      if (first && last && last.top > first.top + first.height / 2)
        found.push(`${spoken(words)}: the word “${word}” is broken over lines`)
    }
  }

  const ofField = (one: HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement) => {
    if (unseen(one) || one.getBoundingClientRect().width < 2) return
    const shown = one instanceof HTMLSelectElement ? (one.selectedOptions[0]?.text ?? '') : one.value
    const asks = one instanceof HTMLSelectElement ? '' : one.placeholder
    if (one.matches('[type=checkbox], [type=radio], [type=file], [type=range]')) return
    if (one instanceof HTMLSelectElement) {
      const style = getComputedStyle(one)
      const pen = document.createElement('canvas').getContext('2d')!
      pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`
      const room = one.clientWidth - Number.parseFloat(style.paddingLeft) - Number.parseFloat(style.paddingRight)
      // Its number stands first: what follows may end in dots, and is read whole in the open list.
      const needs = pen.measureText(shown.replace(/(?<=: .{12}).*/, '…')).width
      if (needs > room + 2) found.push(`list ${spoken(shown)}: ${Math.round(needs)} px of text in ${Math.round(room)}`)
      return
    }
    if (one instanceof HTMLTextAreaElement) {
      if (one.scrollHeight > one.clientHeight + 2 && !scrolls(getComputedStyle(one).overflowY))
        found.push(`area ${spoken(shown)}: is cut off`)
      return
    }
    if (one.scrollWidth > one.clientWidth + 1) found.push(`field ${spoken(shown || asks)}: is cut off`)
    if (shown === '' && asks !== '') {
      const style = getComputedStyle(one)
      const pen = document.createElement('canvas').getContext('2d')!
      pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`
      const room = one.clientWidth - Number.parseFloat(style.paddingLeft) - Number.parseFloat(style.paddingRight)
      if (pen.measureText(asks).width > room + 1) found.push(`field asks ${spoken(asks)}: is cut off`)
    }
  }

  const look = (root: Document | ShadowRoot | Element) => {
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT | NodeFilter.SHOW_ELEMENT)
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      if (node instanceof Text) {
        if (node.parentElement) ofText(node, node.parentElement)
        continue
      }
      const one = node as Element
      if (one.shadowRoot) look(one.shadowRoot)
      if (one.matches('input, select, textarea')) ofField(one as HTMLInputElement)
      if (one.matches('.plot circle.pt, .plot circle.dot, .plot .gone') && !unseen(one))
        marks.push({ box: one.getBoundingClientRect(), holder: one })
    }
  }
  look(start)

  /** By how much two boxes lie over one another, in the lesser direction. */
  const over = (one: DOMRect, other: DOMRect) =>
    Math.min(
      Math.min(one.right, other.right) - Math.max(one.left, other.left),
      Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top),
    )
  // Lines of text have room above and below their letters, which may touch.
  const letters = ({ left, top, width, height }: DOMRect) =>
    new DOMRect(left, top + height / 5, width, (height * 3) / 5)
  const lines = texts.flatMap((one) => one.boxes.map((box) => ({ one, box: letters(box) })))
  lines.sort((one, other) => one.box.top - other.box.top)
  lines.forEach(({ one, box }, at) => {
    for (let next = at + 1; next < lines.length; next++) {
      const { one: other, box: beside } = lines[next]!
      if (beside.top > box.bottom) break
      const most = one === other || one.layer !== other.layer ? 0 : over(box, beside)
      if (most > 1.5) found.push(`${spoken(one.words)} lies over ${spoken(other.words)} by ${most.toFixed(1)} px`)
    }
    if (!(one.holder instanceof SVGElement)) return
    for (const mark of marks) {
      if (mark.holder.closest('svg') !== one.holder.closest('svg')) continue
      const most = over(box, mark.box)
      if (most > 1.5) found.push(`${spoken(one.words)} lies over a reading by ${most.toFixed(1)} px`)
    }
  })
  return [...new Set(found)]
}
