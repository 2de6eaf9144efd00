/** Text fields that make chips of what is typed, by what the page says of them, and the chips around them. */
import { all, byId, first, holds, holdsSeveral, is, own, upward } from './dom.ts'
import { wrapperOf } from './face.ts'
import { labelsOf } from './labels.ts'
import { cut } from '../../bounds.ts'
import { tidy } from '../words.ts'

const asksEnter = /\b(press|hit|type)\b.{0,20}\b(enter|return|comma)\b|\bcomma[- ]separated\b|\b(tags?|chips?)\b/i
const chipWord = /(^|[\s_-])(chips?|tags?|tagify|tokens?)([_-]?(input|field|list|box))?($|[\s_-])/i
/** One chip, or what holds several, by its class or id. */
const chipClass = /(^|[\s_-])(chips?|tags?|tokens?|pills?|badges?|multi-?value)(__|--|[\s_-]|$)/i
const many = /(chips|tags|tokens|pills|badges)|list|group|items|wrap/i
/** Words of an id or a name, apart. */
const fieldWord = /\b(tags|chips|tokens|keywords|(tag|chip|token|keyword) ?(input|field|box|entry))\b/i

const signs = 'button, [role=button], svg, [aria-hidden=true], [class*=remove], [class*=close], [class*=delete]'
const aside = 'label, legend, p, small, h1, h2, h3, h4, h5, h6, [class*=helper], script, style, [role=listbox]'
const suggests = /suggest|auto|result|option|drop|menu|popup|listbox/i
/** Elements that are looked through for chips; a page may put any number into the box. */
const mostLooked = 400

const enders = 'form, fieldset, body, section, main, table, tr'

const attribute = (element: Element, name: string): string => Element.prototype.getAttribute.call(element, name) ?? ''
const said = (element: Element): string => `${attribute(element, 'class')} ${attribute(element, 'id')}`

/** Whether the page says that the field makes chips: in its help, or by the class of what is around it. */
export function saysChips(input: HTMLElement): boolean {
  const root = input.getRootNode() as Document | ShadowRoot
  const help = attribute(input, 'aria-describedby')
    .split(/\s+/)
    .map((id) => byId(root, id)?.textContent ?? '')
  if (asksEnter.test([attribute(input, 'placeholder'), input.title, ...help].join(' '))) return true
  let at: Element | null = input
  for (let level = 0; at && level < 4; level++, at = upward(at)) if (chipWord.test(attribute(at, 'class'))) return true
  return false
}

const isList = (element: Element): boolean =>
  is(element, 'ul, ol, [role=list]') && !suggests.test(said(element)) && !is(element, '[role=listbox]')

function mayHoldChips(element: Element): boolean {
  const children = [...own(element, 'children')]
  return chipClass.test(said(element)) || isList(element) || (children.length > 0 && children.every(isChip))
}

const holdsField = (element: Element): boolean =>
  is(element, 'input, select, textarea') || first(element, 'input:not([type=hidden]), select, textarea') !== null

/** What stands right before or after the field, or after what it stands in, and may hold its chips. */
function besides(input: HTMLElement): Element[] {
  for (let at: Element | null = input, level = 0; at && level < 5; at = upward(at), level++) {
    const beside = [own(at, 'previousElementSibling'), own(at, 'nextElementSibling')].filter(
      (each) => each !== null && !is(each, aside) && !holdsField(each) && mayHoldChips(each),
    ) as Element[]
    const parent = upward(at)
    const alone = parent !== null && !holdsSeveral(parent, 'input:not([type=hidden]), select, textarea')
    // Between two fields the chips may be those of either.
    if (beside.length === 1 || (beside.length > 1 && alone)) return beside
    if (beside.length > 1 || !parent || !alone || is(parent, enders)) return []
  }
  return []
}

/** Whether a word of the page speaks for chips: in the field's own name, its label, or the class of what stands beside it. */
export function namesChips(input: HTMLElement): boolean {
  const names = ['id', 'name', 'data-role', 'data-type'].map((name) => attribute(input, name)).join(' ')
  const apart = names.replaceAll(/([a-z])([A-Z])/g, '$1 $2').replaceAll(/[_-]/g, ' ')
  const label = labelsOf(input).map((each) => cut(own(each, 'textContent') ?? ''))
  if (fieldWord.test(apart) || /\b(tags|chips|keywords)\b/i.test(label.join(' '))) return true
  return besides(input).some((each) => chipClass.test(said(each)))
}

/** Whether the field may make chips though the page does not say so: by a word, or by a list beside it. */
export const mayTakeChips = (input: HTMLElement): boolean =>
  !is(input, '[type=search], [role=searchbox]') && (namesChips(input) || besides(input).length > 0)

function isChip(element: Element): boolean {
  if (is(element, 'li, [role=listitem], [role=row]') || chipClass.test(attribute(element, 'class'))) return true
  return !is(element, signs) && all(element, signs).some((each) => own(each, 'parentElement') === element)
}

/** Text of a chip without the sign that takes it away. */
function chipText(chip: Element): string {
  const copy = chip.cloneNode(true) as Element
  for (const each of all(copy, signs)) each.remove()
  return tidy(copy.textContent ?? '').replace(/\s*[×✕✖]$/, '')
}

/** Texts of the chips of a field; where the page says that it makes chips, whatever text stands in its box is one. */
export function chipTexts(input: HTMLElement): string[] {
  const texts: string[] = []
  const add = (text: string) => {
    const chip = tidy(text).replace(/\s*[×✕✖]$/, '')
    if (chip) texts.push(chip)
  }
  let looked = 0
  const visit = (node: Node, loose: boolean): void => {
    if (node === input || ++looked > mostLooked) return
    if (node.nodeType === Node.TEXT_NODE && loose) add(node.textContent ?? '')
    if (node.nodeType !== Node.ELEMENT_NODE) return
    const element = node as Element
    if (is(element, aside)) return
    if (!holds(element, input) && isChip(element) && !all(element, '*').slice(0, mostLooked).some(isChip)) {
      const parts = [...own(element, 'children')].filter((each) => !is(each, signs))
      if (many.test(attribute(element, 'class')) && parts.length > 0) for (const part of parts) add(chipText(part))
      else add(chipText(element))
    } else if (!is(element, signs)) for (const child of own(element, 'childNodes')) visit(child, loose)
  }
  const box = wrapperOf(input, 4)
  const loose = saysChips(input)
  if (box !== input) for (const child of own(box, 'childNodes')) visit(child, loose)
  for (const beside of besides(input)) if (!holds(box, beside)) visit(beside, false)
  return texts
}

/** What stands loose in the field. */
export const looseText = (field: HTMLElement): string =>
  field.isContentEditable ? tidy(field.textContent ?? '') : (field as HTMLInputElement).value
