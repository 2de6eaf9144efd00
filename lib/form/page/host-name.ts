/** What the component is called that a control is part of: the page labels the component, not what it is made of. */
import { cut } from '../../bounds.ts'
import { all, holds, own, upward } from './dom.ts'
import { labelsFor } from './labels.ts'
import { beside as textBeside, named, textIn } from './names.ts'
import { tidy } from '../words.ts'

/** Components in components. */
const deepest = 4

/** Labels that are elements of the page's own, which point to a control as the standard's do. */
function customLabels(host: Element): Element[] {
  const { id } = host
  const root: Node = Node.prototype.getRootNode.call(host)
  if (id === '' || !('querySelectorAll' in root)) return []
  return [...(root as Document).querySelectorAll(`[for="${CSS.escape(id)}"]`)]
}

/** What the page calls a component. `after`: text behind it comes before text in front of it. */
export function nameOfHost(host: Element, after: boolean): string {
  const root: Node = Node.prototype.getRootNode.call(host)
  const around = host.closest('label')
  // The label of a field stands in it, or beside it in a component that is made for both.
  const beside = own(host, 'assignedSlot') ? upward(host) : null
  const slotted = [host, beside].flatMap((each) => (each ? all(each, ':scope > [slot=label]') : []))
  const texts = (elements: readonly Element[]) =>
    tidy(
      elements
        .filter((each) => !holds(host, each) || slotted.includes(each as HTMLElement))
        .map(textIn)
        .join(' '),
    )
  return (
    tidy(host.getAttribute('aria-label') ?? '') ||
    texts(named(host, 'aria-labelledby')) ||
    texts(slotted) ||
    tidy(host.getAttribute('label') ?? '') ||
    texts(labelsFor(root, host.id)) ||
    texts(customLabels(host)) ||
    (around ? texts([around]) : '') ||
    (after && textBeside(host, true)) ||
    textBeside(host, false)
  )
}

/**
 * The name that the page gives to the component, or to one around it; empty for what stands in no shadow root.
 *
 * @param after whether the text behind it comes before the text in front of it, as for a tick
 */
export function hostName(element: Element, after: boolean): string {
  let root: Node = Node.prototype.getRootNode.call(element)
  for (let level = 0; 'host' in root && level < deepest; level++) {
    const host = root.host as Element
    const name = own(host, 'localName').startsWith('gapsum-') ? '' : cut(nameOfHost(host, after))
    if (name) return name
    root = Node.prototype.getRootNode.call(host)
  }
  return ''
}
