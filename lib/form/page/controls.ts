/** The controls of a page that a person can see and use. */
import { mostControls } from '../../bounds.ts'
import { groupBoxes } from './boxes.ts'
import { faceOf } from './face.ts'
import { farControls, type Far } from './far.ts'
import { lookOnce } from './look.ts'
import { lockableKinds, tickKinds } from '../kind-traits.ts'
import { groupName, nameOf, sectionOf } from './names.ts'
import { bareKind } from './bare.ts'
import { mayTakeChips, saysChips } from './chips.ts'
import { drawn, keptInDrawn, native, opensCalendar, opensList, recognise } from './recognise.ts'
import type { ControlKind } from '../schema.ts'
import { is, own } from './dom.ts'
import { secretOf } from './gate.ts'
import { rootOf } from './shadow.ts'
import { hiddenBecause } from './visible.ts'

export interface Control {
  kind: ControlKind
  /** The element itself; for a group its first element. */
  element: HTMLElement
  /** All radios of a group, all boxes or sections of a date; otherwise the one element. */
  elements: HTMLElement[]
  name: string
  section: string
  /** Index among the listed controls of the same kind. */
  position: number
  /** The boxes of a date as controls of their own: a form map may bind each by itself. */
  parts?: Control[]
  /** For a control in a frame of another origin: how it is read and written there. */
  far?: Far
}

export const leftOutReasons = [
  'hidden',
  'disabled',
  'readonly',
  'password',
  'payment',
  'left to you',
  'not supported',
] as const

export interface LeftOut {
  element: HTMLElement
  name: string
  section: string
  reason: (typeof leftOutReasons)[number]
  /** What exactly, when there is more to say. */
  detail: string
}

export interface Survey {
  controls: Control[]
  leftOut: LeftOut[]
  /** Whether the page has more controls than are looked at. */
  more: boolean
  /** The documents and shadow roots that were walked. */
  roots: readonly Node[]
}

const silent = new Set(['hidden', 'submit', 'reset', 'button', 'image'])

/** Words by which a person answers for something with a tick; never given for them. */
const statement =
  /\b(certif(y|ies)|sign(ed|ature|ing)?|attest\w*|declare|affirm|swear|acknowledge\w*|agree|consent|confirm|perjury)\b/i
const statementHeading = /\b(certification|attestation|declaration|acknowledge?ment|signatures?)\b/i
const signature = /\b(e-?)?signatures?\b|\bsign here\b|\binitials?\b/i

/**
 * Every element in document order: shadow roots before the host's own children, same-origin frames in their place.
 * @param roots takes the documents and shadow roots that were walked
 */
function* everyElement(root: Document | ShadowRoot, roots: Node[]): Generator<Element> {
  roots.push(root)
  const document = root.ownerDocument ?? (root as Document)
  // The helper's own panels and the embeddable widget are no part of the page's form.
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_ELEMENT, (node) =>
    own(node as Element, 'localName').startsWith('gapsum-') ? NodeFilter.FILTER_REJECT : NodeFilter.FILTER_ACCEPT,
  )
  while (walker.nextNode()) {
    const element = walker.currentNode as Element
    yield element
    const shadow = rootOf(element)
    if (shadow) yield* everyElement(shadow, roots)
    const name = own(element, 'localName')
    if (name === 'iframe' || name === 'frame') {
      let inside: Document | null = null
      try {
        inside = (element as HTMLIFrameElement).contentDocument
      } catch {
        // A frame of another origin: it is reached by its own copy of this script, or not at all.
      }
      if (inside) yield* everyElement(inside, roots)
    }
  }
}

function onlyRead(element: HTMLElement): boolean {
  return (element as HTMLInputElement).readOnly || element.getAttribute('aria-readonly') === 'true'
}

function textKind(input: HTMLInputElement): ControlKind {
  if (opensCalendar(input)) return 'calendar'
  // A field that opens a calendar can be typed into.
  const opens = input.getAttribute('aria-haspopup') ?? 'listbox'
  const calendar =
    (opens === 'dialog' && !is(input, '[aria-autocomplete=list], [aria-autocomplete=both]')) || opens === 'grid'
  if (input.getAttribute('role') === 'combobox' && !calendar) return 'combobox'
  if (opensList(input)) return 'combobox'
  return saysChips(input) || mayTakeChips(input) ? 'chips' : 'text'
}

/** What a control of several elements is called, or the one element. */
export function nameOfControl(kind: ControlKind, elements: readonly HTMLElement[]): string {
  const [first] = elements
  if (!first) return ''
  const group = kind === 'radio' || kind === 'date-sections' || kind === 'date-boxes'
  return (group && groupName(elements)) || nameOf(first)
}

/**
 * Lists the controls of a page, and what was left out with the reason.
 * @param most so many at most
 */
export const survey = (document: Document, most: number = mostControls): Survey =>
  lookOnce(() => {
    const steps = surveying(document, most)
    let step = steps.next()
    while (!step.done) step = steps.next()
    return step.value
  })

/** So many elements are looked at in a step of {@link surveying}. */
const elementsAStep = 256

/**
 * The same as {@link survey} bit by bit, for pages that take long: each step can say what was found by then. Whoever lets
 * the page go on between two steps looks again before anything is typed.
 */
export function* surveying(document: Document, most: number = mostControls): Generator<() => Survey, Survey> {
  const controls: Control[] = []
  const leftOut: LeftOut[] = []
  const headings = new Map<Element, string>()
  const counts = new Map<ControlKind, number>()
  const radiosIn = new Map<Node, Map<string, HTMLInputElement[]>>()
  const groups: Map<Node, Map<string, HTMLElement[]>> = new Map()

  const leave = (elements: HTMLElement[], reason: LeftOut['reason'], detail = '') => {
    const element = elements[0] as HTMLElement
    const name = elements.length > 1 ? groupName(elements) : nameOf(element)
    leftOut.push({ element, name, section: sectionOf(elements, name, headings), reason, detail })
  }

  const consider = (elements: HTMLElement[], kind: ControlKind) => {
    const usable: HTMLElement[] = []
    let why: [LeftOut['reason'], string] | undefined
    for (const element of elements) {
      const hidden = faceOf(element) ? undefined : hiddenBecause(element)
      if (hidden !== undefined) why ??= ['hidden', hidden]
      else if (element.matches(':disabled, [aria-disabled=true]') || element.closest('[inert]'))
        why ??= ['disabled', '']
      else if (lockableKinds.has(kind) && onlyRead(element)) why ??= ['readonly', '']
      else usable.push(element)
    }
    if (usable.length === 0) return why && leave(elements, ...why)
    const name = nameOfControl(kind, elements)
    const section = sectionOf(elements, name, headings)
    const tick = tickKinds.has(kind)
    const answers = statement.test(`${name} ${section}`) || (tick && statementHeading.test(section))
    if (tick || kind === 'radio' ? answers : signature.test(name)) return leave(elements, 'left to you')
    const position = counts.get(kind) ?? 0
    counts.set(kind, position + 1)
    controls.push({ kind, element: usable[0] as HTMLElement, elements: usable, name, section, position })
  }

  let more = false
  const roots: Node[] = []
  let elements = 0
  for (const found of everyElement(document, roots)) {
    if (++elements % elementsAStep === 0)
      yield () => ({ controls: groupBoxes(controls), leftOut: [...leftOut], more, roots })
    if (controls.length + leftOut.length >= most) {
      more = true
      break
    }
    const element = found as HTMLElement
    const tag = own(element, 'localName')
    if (tag === 'textarea') consider([element], 'textarea')
    else if (tag === 'select') consider([element], (element as HTMLSelectElement).multiple ? 'multiple' : 'select')
    else if (tag === 'input') {
      const input = element as HTMLInputElement
      if (silent.has(input.type)) continue
      if (is(input, '[type=radio], [type=checkbox]') && keptInDrawn(input)) continue
      const secret = secretOf(input)
      if (secret) leave([input], secret)
      else {
        const kind = native[input.type]
        if (!kind) leave([input], 'not supported', `input of type ${input.type}`)
        else if (kind === 'text') consider([input], textKind(input))
        else if (kind === 'radio' && input.name) {
          const owner = input.form ?? input.getRootNode()
          const named = groups.get(owner) ?? new Map<string, HTMLElement[]>()
          groups.set(owner, named)
          if (named.has(input.name)) continue
          const root = input.getRootNode() as Document | ShadowRoot
          let ofName = radiosIn.get(root)
          if (!ofName) {
            ofName = Map.groupBy(root.querySelectorAll<HTMLInputElement>('input[type=radio]'), ({ name }) => name)
            radiosIn.set(root, ofName)
          }
          const radios = (ofName.get(input.name) ?? []).filter((each) => (each.form ?? each.getRootNode()) === owner)
          named.set(input.name, radios)
          consider(radios, kind)
        } else if (kind === 'radio') {
          // Some pages tell the radios of a group apart in their own script and give them no name.
          const holder = input.closest('fieldset, [role=radiogroup], [role=group]') ?? input
          if (groups.has(holder)) continue
          groups.set(holder, new Map())
          const unnamed = [...holder.querySelectorAll<HTMLInputElement>('input[type=radio]')].filter(
            (each) => !each.name,
          )
          consider(unnamed.length > 0 ? unnamed : [input], kind)
        } else consider([input], kind)
      }
    } else if (is(element, drawn) || (tag.includes('-') && bareKind(element))) {
      const control = recognise(element)
      if (control) consider(control.elements, control.kind)
    }
  }
  // The page's frames of other origins tell of themselves.
  const far = document === globalThis.document ? farControls() : []
  return { controls: [...groupBoxes(controls), ...far], leftOut, more, roots }
}

/** Lists the controls of a page that can be filled. */
export function listControls(document: Document): Control[] {
  return survey(document).controls
}
