/** What a control is called, and under which heading it stands. */
import { cut, mostRead } from '../../bounds.ts'
import { all, byId, first, holds, holdsSeveral, is, own, upward } from './dom.ts'
import { hostName, nameOfHost } from './host-name.ts'
import { labelsFor, labelsOf } from './labels.ts'
import { inTable } from './table.ts'
import { parentOf } from './visible.ts'
import { squeeze, tidy } from '../words.ts'

export const anyControl =
  'input:not([type=hidden]), select, textarea, button, [contenteditable=true], [role=combobox], [role=slider], ' +
  '[role=spinbutton], [role=checkbox], [role=switch], [role=radio]'
const headings = 'h1, h2, h3, h4, h5, h6, [role=heading]'

const isElement = (node: Node): node is Element => Reflect.get(Node.prototype, 'nodeType', node) === Node.ELEMENT_NODE
const isText = (node: Node): node is Text => Reflect.get(Node.prototype, 'nodeType', node) === Node.TEXT_NODE
const precedingOf = (element: Element): Element | null => own(element, 'previousElementSibling')

/** Text of a node without what its own controls and scripts hold; no more of it than is ever used. */
export function textIn(node: Node): string {
  let text = ''
  const add = (at: Node, depth: number): void => {
    if (text.length >= mostRead) return
    if (isText(at)) text += at.data.slice(0, mostRead)
    if (!isElement(at) || depth > 200) return
    if (is(at, 'script, style, template, noscript, select, textarea, button, datalist, [hidden]')) return
    // A slot shows what stands in it elsewhere in the page.
    const shown = own(at, 'localName') === 'slot' ? (at as HTMLSlotElement).assignedNodes() : []
    for (const each of shown) add(each, depth + 1)
    let child = shown.length > 0 ? null : own(at, 'firstChild')
    for (; child && text.length < mostRead; child = own(child as unknown as Element, 'nextSibling')) {
      add(child, depth + 1)
      if (isElement(child)) text += ' '
    }
  }
  add(node, 0)
  return text
}

function labelled(element: Element): boolean {
  return element.hasAttribute('aria-label') || element.hasAttribute('aria-labelledby') || labelsOf(element).length > 0
}

/** Native controls that a widget keeps hidden inside or beside its box. */
function keptBy(element: Element): Element[] {
  if (element.matches('input, select, textarea')) return []
  for (let at: Element | null = element, level = 0; at && level < 4; at = upward(at), level++) {
    if (is(at, 'form, fieldset, body') || all(at, '[role=combobox]').length > 1) return []
    const kept = all(at, 'input:not([type=hidden]), select').filter(
      (each) => element.contains(each) || each.matches('[aria-hidden=true], [tabindex="-1"], [hidden]'),
    )
    if (kept.length > 0) return kept
  }
  return []
}

/** What a control without a native one is drawn in: labels often point to its box. */
function boxesOf(element: Element): Element[] {
  const boxes: Element[] = []
  let at = element.matches('input, select, textarea') ? null : upward(element)
  for (; at && boxes.length < 3 && all(at, anyControl).length === 1; at = upward(at)) boxes.push(at)
  return boxes
}

/** Labels that point to a drawn control, or to the native one that it hides. */
function pointedLabels(element: Element): readonly Element[] {
  const root = element.getRootNode() as Document | ShadowRoot
  for (const { id } of [element, ...keptBy(element), ...boxesOf(element)]) {
    const labels = labelsFor(root, id)
    if (labels.length > 0) return labels
  }
  const label = element.closest('label')
  return label ? [label] : []
}

/** Name of a control drawn by the page: without its own content, which is its value. */
function drawnName(element: Element): string {
  const root = element.getRootNode() as Document | ShadowRoot
  const named = (element.getAttribute('aria-labelledby') ?? '')
    .split(/\s+/)
    .map((id) => byId(root, id))
    .filter((each) => each && !element.contains(each))
    .map((each) => textIn(each as Element))
  const said = tidy(element.getAttribute('aria-label') ?? '')
  const labels = tidy(pointedLabels(element).map(textIn).join(' '))
  // Some widgets say their value or prompt here.
  const itself = said === tidy(element.textContent ?? '')
  return tidy(named.join(' ')) || (itself ? labels || said : said || labels)
}

function accessible(element: Element): string {
  const labels = labelsOf(element)
  // A label around a select would bring the select's value into the name.
  if (labels.length > 0 && !element.hasAttribute('aria-labelledby') && !element.hasAttribute('aria-label'))
    return tidy(labels.map(textIn).join(' '))
  return tidy(nameSaid(element))
}

const attribute = (element: Element, name: string): string =>
  squeeze(Element.prototype.getAttribute.call(element, name) ?? '')

/** The elements that an attribute names by their ids. */
export const named = (element: Element, name: string): HTMLElement[] =>
  attribute(element, name)
    .split(' ')
    .flatMap((id) => byId(Node.prototype.getRootNode.call(element), id) ?? [])

const contentOf = (element: Element): string => [...own(element, 'childNodes')].map(textIn).join(' ').trim()

/** What is read out of an element: its label, the text in place of an image, or what it holds. */
const readOut = (element: Element): string =>
  attribute(element, 'aria-label') ||
  (is(element, 'input:not([type=hidden]), select, textarea')
    ? (element as HTMLInputElement).value
    : contentOf(element) ||
      all(element, 'img[alt], [aria-label]')
        .map((each) => attribute(each, 'alt') || attribute(each, 'aria-label'))
        .join(' '))

/** Roles and elements that are called by what they hold. */
const byContent = 'button, summary, [role=button], [role=checkbox], [role=radio], [role=switch], [role=option]'

/** The accessible name, by the steps of Accessible Name and Description Computation 1.2 that controls and groups need. */
function nameSaid(element: Element): string {
  const legend = is(element, 'fieldset') ? first(element, ':scope > legend') : null
  return (
    named(element, 'aria-labelledby').map(readOut).join(' ').trim() ||
    attribute(element, 'aria-label') ||
    (legend ? textIn(legend) : is(element, byContent) ? readOut(element) : '') ||
    labelsOf(element).map(textIn).join(' ') ||
    attribute(element, 'title') ||
    attribute(element, 'placeholder')
  )
}

/** Text right before (or, for a tick, right after) the control, up to the next control, at most three levels up. */
export function beside(element: Element, after: boolean): string {
  let at: Element = element
  for (let level = 0; level < 4; level++) {
    for (
      let node = own(at, after ? 'nextSibling' : 'previousSibling');
      node;
      node = Reflect.get(Node.prototype, after ? 'nextSibling' : 'previousSibling', node) as ChildNode | null
    ) {
      if (isElement(node)) {
        if (is(node, anyControl) || first(node, anyControl)) return ''
        if (is(node, `${headings}, legend`)) return ''
      }
      const text = tidy(textIn(node))
      if (text) return text.slice(0, 200)
    }
    const parent = upward(at)
    if (!parent || is(parent, 'form, fieldset, table, body, section, article, main')) return ''
    // Going up is right only while the parent holds nothing but this control.
    if (holdsSeveral(parent, anyControl)) return ''
    at = parent
  }
  return ''
}

/** Roles whose content is the value, not the name. */
const valued = '[role=combobox], [role=listbox], [role=slider], [role=spinbutton], [role=textbox], [contenteditable]'

const isComponent = (element: Element): boolean => own(element, 'localName').includes('-')

/** Name of one control. */
export const nameOf = (element: Element): string => cut(wholeName(element))

function wholeName(element: Element): string {
  if (element.matches(valued) || element.matches('button, [role=button]')) {
    const name = drawnName(element)
    if (name) return name
    if (element.matches('[aria-pressed], [role=switch]')) return accessible(element) || beside(element, false)
  } else if (
    element.matches(':is([role=radio], [role=checkbox], [role=switch], [role=option]):not(input)') ||
    isComponent(element)
  ) {
    const name = drawnName(element) || accessible(element) || (isComponent(element) ? tidy(textIn(element)) : '')
    if (name) return name
  } else if (labelled(element)) {
    const name = accessible(element)
    // A label around a handle may show nothing but its value.
    if (name && !(is(element, '[type=range]') && name === (element as HTMLInputElement).value)) return name
  }
  const input = element as HTMLInputElement
  const tick = input.type === 'checkbox' || input.type === 'radio' || element.matches('[role=checkbox], [role=radio]')
  const host = hostName(element, tick)
  if (host) return host
  const table = tick ? undefined : inTable(element)
  return (
    (tick && beside(element, true)) ||
    beside(element, false) ||
    table?.row ||
    table?.column ||
    tidy(input.title || input.placeholder || '')
  )
}

/** The group that drawn radios stand in where slots have put them there. */
function slottedGroup(radio: Element): Element | undefined {
  if (is(radio, 'input')) return undefined
  for (let at = parentOf(radio), level = 0; at && level < 12; at = parentOf(at), level++)
    if (is(at, 'fieldset, [role=radiogroup]') || /radio-?group$/.test(own(at, 'localName'))) return at
  return undefined
}

/** The element that holds all radios of a group and nothing else, if the page has one. */
function holderOf(radios: readonly Element[]): Element | undefined {
  const holder = radios[0]?.closest('fieldset, [role=radiogroup], [role=group]')
  if (!holder) return radios[0] && slottedGroup(radios[0])
  // A widget's own hidden field is no control of its own.
  const others = all(holder, anyControl).filter((each) => !each.matches('[aria-hidden=true]'))
  return others.every((each) => radios.includes(each)) ? holder : undefined
}

/** Name of a radio group: its own legend or label, or the text before its first radio. */
export const groupName = (radios: readonly Element[]): string => cut(wholeGroupName(radios))

function wholeGroupName(radios: readonly Element[]): string {
  const holder = holderOf(radios)
  if (holder) {
    const legend = first(holder, ':scope > legend')
    const component = own(holder, 'localName').includes('-')
    const name =
      (legend ? tidy(textIn(legend)) : accessible(holder) || drawnName(holder)) ||
      (component ? nameOfHost(holder, false) : hostName(holder, false))
    if (name) return name
  }
  const [start] = radios
  if (!start) return ''
  let around: Element | null = start
  while (around && !radios.every((each) => around && holds(around, each))) around = upward(around)
  if (!around) return ''
  const table = inTable(start)
  if (table?.row && around.closest('td, th')) return table.row
  let head = ''
  for (const node of own(around, 'childNodes')) {
    if (isElement(node) && (first(node, anyControl) || node === start)) break
    if (isElement(node) && is(node, 'label') && radios.some((each) => isLabelOf(each, node))) break
    head += ` ${textIn(node)}`
  }
  return tidy(head).slice(0, 200) || beside(around, false)
}

function isLabelOf(radio: Element, label: Element): boolean {
  return labelsOf(radio).includes(label as HTMLLabelElement)
}

/** A heading that an element is, or holds without holding a control too. */
function headingIn(element: Element): string {
  if (is(element, headings)) return cut(tidy(textIn(element)))
  const last = all(element, headings).at(-1)
  return last && !first(element, anyControl) ? cut(tidy(textIn(last))) : ''
}

/** The heading at or before an element among its siblings; remembered, so that long flat pages stay quick. */
function headingBefore(element: Element, known: Map<Element, string>): string {
  const passed: Element[] = []
  let found = ''
  for (let at = precedingOf(element); at; at = precedingOf(at)) {
    const seen = known.get(at)
    if (seen !== undefined) {
      found = seen
      break
    }
    passed.push(at)
    found = headingIn(at)
    if (found) break
  }
  for (const each of passed) known.set(each, found)
  return found
}

/** Nearest legend, group label or heading above the elements of a control that is not its own name. */
export const sectionOf = (
  elements: readonly Element[],
  name: string,
  known: Map<Element, string> = new Map(),
): string => cut(wholeSection(elements, name, known))

function wholeSection(elements: readonly Element[], name: string, known: Map<Element, string>): string {
  const [start] = elements
  if (!start) return ''
  const holder = elements.length > 1 ? holderOf(elements) : undefined
  const table = inTable(start)
  if (table?.column && table.column !== name && table.row) return table.column
  for (let at: Element | null = start; at;) {
    const above = headingBefore(at, known)
    if (above && above !== name) return above
    const parent: Element | null = upward(at)
    if (!parent) {
      const root: Node = Node.prototype.getRootNode.call(at)
      at = 'host' in root ? (root.host as Element) : (own(at, 'ownerDocument').defaultView?.frameElement ?? null)
      continue
    }
    at = parent
    if (at === holder) continue
    if (is(at, 'fieldset')) {
      const legend = first(at, ':scope > legend')
      const text = legend ? tidy(textIn(legend)) : ''
      if (text && text !== name) return text
    } else if (
      is(at, '[role=group], [role=radiogroup], [role=region], section[aria-label], section[aria-labelledby]')
    ) {
      const text = accessible(at)
      if (text && text !== name) return text
    }
  }
  return ''
}
