/** Seeded redesigns of a page: what a site does to its form from one year to the next, on the living document. */

export type Random = () => number

/** Mulberry32, a small generator in the public domain. */
export function seeded(seed: number): Random {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

const controlled = 'input:not([type=hidden]), select, textarea'

/** Every element, shadow roots and frames of the same origin included. */
export function everything(root: Document | ShadowRoot | Element): Element[] {
  const found: Element[] = []
  for (const element of root.querySelectorAll('*')) {
    found.push(element)
    if (element.shadowRoot) found.push(...everything(element.shadowRoot))
    if (element.localName === 'iframe') {
      const inside = (element as HTMLIFrameElement).contentDocument
      if (inside) found.push(...everything(inside))
    }
  }
  return found
}

export const controlsIn = (element: Element): Element[] =>
  [element, ...(element.shadowRoot ? everything(element.shadowRoot) : []), ...everything(element)].filter((each) =>
    each.matches(controlled),
  )

const token = (random: Random): string =>
  `${'kqxvzjwp'[Math.floor(random() * 8)] ?? 'k'}${Math.floor(random() * 1e9).toString(36)}${Math.floor(random() * 1e4)}`

/** New ids and names, with everything that points to them. */
export function renameAll(random: Random): void {
  const names = new Map<string, string>()
  const ids = new Map<Node, Map<string, string>>()
  const all = everything(document)
  for (const element of all) {
    if (element.id) {
      const root = element.getRootNode()
      const known = ids.get(root) ?? new Map<string, string>()
      ids.set(root, known)
      known.set(element.id, token(random))
      element.id = known.get(element.id) ?? ''
    }
    const name = element.getAttribute('name')
    if (name) {
      if (!names.has(name)) names.set(name, token(random))
      element.setAttribute('name', names.get(name) ?? '')
    }
  }
  for (const element of all) {
    const known = ids.get(element.getRootNode())
    for (const attribute of [
      'for',
      'aria-labelledby',
      'aria-describedby',
      'aria-controls',
      'aria-errormessage',
      'list',
    ]) {
      const value = element.getAttribute(attribute)
      if (value)
        element.setAttribute(
          attribute,
          value
            .split(/\s+/)
            .map((id) => known?.get(id) ?? id)
            .join(' '),
        )
    }
  }
}

const selfContained = (child: Element): boolean => {
  if (child.matches('td, th, option, legend, label') || child.matches(controlled)) return false
  const controls = controlsIn(child)
  return (
    controls.length > 0 &&
    controls.every((control) =>
      [...((control as HTMLInputElement).labels ?? [])].every(
        (label) => label.getRootNode() !== control.getRootNode() || child.contains(label) || child.shadowRoot,
      ),
    ) &&
    /\p{L}{2}/u.test(
      `${child.textContent ?? ''}${child.shadowRoot?.textContent ?? ''}${child.getAttribute('label') ?? ''}`,
    )
  )
}

/** Parts that stand side by side in another order; never across a heading, which would change what they mean. */
export function shuffle(random: Random): void {
  const parents = new Set(
    everything(document)
      .filter(selfContained)
      .map(({ parentElement }) => parentElement),
  )
  for (const parent of parents) {
    if (!parent) continue
    let run: Element[] = []
    const runs: Element[][] = []
    for (const node of parent.childNodes) {
      if (node.nodeType === Node.ELEMENT_NODE && selfContained(node as Element)) run.push(node as Element)
      else if (node.nodeType === Node.ELEMENT_NODE || (node.textContent ?? '').trim()) {
        runs.push(run)
        run = []
      }
    }
    for (const each of [...runs, run]) {
      if (each.length < 2) continue
      const places = each.map((element) => {
        const mark = document.createComment('')
        element.replaceWith(mark)
        return mark
      })
      const order = each.map((element) => ({ element, key: random() })).toSorted((a, b) => a.key - b.key)
      for (const [at, mark] of places.entries()) mark.replaceWith((order[at] as { element: Element }).element)
    }
  }
}

const rewordings: readonly ((text: string) => string)[] = [
  (text) => text.toUpperCase(),
  (text) => text.toLowerCase(),
  (text) => `${text}:`,
  (text) => `${text} *`,
  (text) => `Please enter ${text}`,
  (text) => `${text} (required)`,
  (text) => `The ${text}`,
  (text) => `B${1 + (text.length % 8)}. ${text}`,
  (text) =>
    text
      .replace(/\bnumber\b/i, 'No.')
      .replace(/^Test date$/, 'Date of test')
      .replace(/^Date of test$/, 'Test date'),
  (text) => text.replace(/,? ?\(.*\)$/, ''),
  (text) => text.replace(/, printed name$/, ' (printed name)').replace(/\bCity\b/, 'City or town'),
  (text) => `${text} of this building`,
]

/** The same question in other words of the trade (common practice, no source). */
const otherWords: readonly (readonly [RegExp, string])[] = [
  [/\bnumber\b/i, 'ref.'],
  [/\bCFM ?50\b/i, 'CFM at 50 Pa'],
  [/\bCFM at 50 Pa\b/i, 'CFM50'],
  [/\bACH ?50\b/i, 'Air changes/hour at 50 Pa'],
  [/\bAir changes per hour at 50 Pa\b/i, 'ACH50'],
  [/\b(house|building|dwelling)\b/i, 'home'],
  [/\b(date of test|test date)\b/i, 'Date the home was tested'],
  [/\bstreet address\b/i, 'Address of the tested home'],
  [/\bconditioned\b/i, 'heated'],
  [/\btester\b/i, 'technician'],
  [/\b(city|town)\b/i, 'municipality'],
  [/\bcompany\b/i, 'firm'],
  [/\bresult\b/i, 'Outcome'],
  [/\bcomments\b/i, 'Remarks'],
]

/** The text in other words; unchanged where it has none of the words of the trade. */
function inOtherWords(text: string): string {
  const change = otherWords.find(([word]) => word.test(text))
  return change ? text.replace(change[0], change[1]) : text
}

/**
 * The texts that name controls and their sections, each changed with the given likelihood.
 * @param anew in other words, not only a little
 */
export function reword(random: Random, labels: number, headings: number, anew = false): void {
  const roots = new Set(everything(document).map((element) => element.getRootNode() as Document | ShadowRoot))
  for (const root of roots) {
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT)
    const texts: Text[] = []
    while (walker.nextNode()) texts.push(walker.currentNode as Text)
    for (const node of texts) {
      const text = node.data.trim()
      const parent = node.parentElement
      if (!parent || !/\p{L}{2}/u.test(text) || parent.closest('option, script, style, button, textarea, title'))
        continue
      const likelihood = parent.closest('h1, h2, h3, h4, legend, th') ? headings : labels
      if (random() >= likelihood) continue
      const change = anew ? inOtherWords : rewordings[Math.floor(random() * rewordings.length)]
      // The words of a radio are its options: new case or marks only.
      const tick = parent.closest('label')?.control?.matches('[type=radio]')
      if (change) node.data = node.data.replace(text, () => (tick ? text.toUpperCase() : change(text)))
    }
  }
}

/** Elements of no meaning around parts of the page. */
export function wrap(random: Random): void {
  for (const element of everything(document)) {
    const whole = selfContained(element) && !element.matches('tr, tbody, body, head, html, thead')
    if (!(whole || (element.matches(controlled) && !element.closest('td'))) || random() >= 0.3) continue
    const wrapper = element.ownerDocument.createElement(whole ? 'div' : 'span')
    wrapper.className = token(random)
    element.replaceWith(wrapper)
    wrapper.append(element)
  }
}

/** The largest part of the page that holds just this control and what names it. */
export function blockOf(element: Element, own: readonly Element[]): Element | undefined {
  let at: Element = element
  for (;;) {
    const root = at.getRootNode()
    const up: Element | undefined = at.parentElement ?? ('host' in root ? (root.host as Element) : undefined)
    if (!up || up.matches('body, html, form, tr, tbody, table') || controlsIn(up).some((each) => !own.includes(each)))
      break
    at = up
  }
  return selfContained(at) ? at : undefined
}

const others = ['Mailing', 'Previous', 'Second', 'Proposed', 'Neighbour’s', 'Requested']

/**
 * A control much like the given one beside it, whose name has one word more.
 * @param named it also has the same name in the page's own code
 */
export function insertLookalike(block: Element, random: Random, named = false): Element | undefined {
  const word = others[Math.floor(random() * others.length)] ?? ''
  const copy = block.cloneNode(true) as Element
  if (copy.hasAttribute('label')) copy.setAttribute('label', `${word} ${copy.getAttribute('label')?.toLowerCase()}`)
  else {
    const walker = document.createTreeWalker(copy, NodeFilter.SHOW_TEXT)
    let first: Text | undefined
    while (!first && walker.nextNode()) {
      const node = walker.currentNode as Text
      if (/\p{L}{2}/u.test(node.data) && !node.parentElement?.closest('option, script')) first = node
    }
    if (!first) return undefined
    first.data = `${word} ${first.data.trim()} `
  }
  const ids = new Map<string, string>()
  for (const element of [copy, ...copy.querySelectorAll('*')]) {
    if (element.id) ids.set(element.id, (element.id = token(random)))
    if (element.hasAttribute('name') && !named) element.setAttribute('name', `other-${element.getAttribute('name')}`)
  }
  const before = [block, ...block.querySelectorAll('[id]')].map(({ id }) => id).filter(Boolean)
  const after = [...ids.values()]
  for (const label of copy.querySelectorAll('[for]')) {
    const at = before.indexOf(label.getAttribute('for') ?? '')
    if (after[at]) label.setAttribute('for', after[at] as string)
  }
  if (random() < 0.5) block.before(copy)
  else block.after(copy)
  return copy
}
