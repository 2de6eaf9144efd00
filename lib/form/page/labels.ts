/** The labels of controls. A browser looks through the whole page for those of one control; here it is done once a look. */
import { is, own } from './dom.ts'
import { inLook } from './look.ts'

interface Index {
  /** By the control that the label is for. */
  control: Map<Element, HTMLLabelElement[]>
  /** By the id that the label names. */
  id: Map<string, HTMLLabelElement[]>
}

const indexes = inLook(() => new Map<Node, Index>())

/** All labels in a document or shadow root, once a look; outside of one nothing is remembered. */
function indexOf(root: Document | ShadowRoot): Index | undefined {
  const known = indexes()
  const before = known?.get(root)
  if (before || !known) return before
  const labels = [...root.querySelectorAll('label')]
  const index: Index = {
    control: Map.groupBy(
      labels.filter(({ control }) => control !== null),
      ({ control }) => control as Element,
    ),
    id: Map.groupBy(labels, ({ htmlFor }) => htmlFor),
  }
  known.set(root, index)
  return index
}

const rootOf = (element: Element): Node => Node.prototype.getRootNode.call(element)
const isRoot = (root: Node): root is Document | ShadowRoot => 'getElementById' in root

/** What the HTML standard lets a label be for, elements of pages' own left out. */
const labelable = 'button, input, meter, output, progress, select, textarea'

/** The labels of a control as they are now: Firefox goes on naming those that a page has pointed elsewhere since. */
export function labelsOf(element: Element): readonly HTMLLabelElement[] {
  if (!is(element, labelable)) return []
  const root = rootOf(element)
  const index = isRoot(root) ? indexOf(root) : undefined
  if (index) return index.control.get(element) ?? []
  // Not for a control that none can point to.
  if (own(element, 'id') === '' && Element.prototype.closest.call(element, 'label') === null) return []
  return [...((element as HTMLInputElement).labels ?? [])].filter(({ control }) => control === element)
}

/** The labels that name an id, of whatever element. */
export function labelsFor(root: Node, id: string): readonly HTMLLabelElement[] {
  if (id === '' || !isRoot(root)) return []
  const index = indexOf(root)
  return index
    ? (index.id.get(id) ?? [])
    : [...root.querySelectorAll<HTMLLabelElement>(`label[for="${CSS.escape(id)}"]`)]
}
