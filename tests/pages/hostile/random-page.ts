/** Random pages and fills of them, seeded; runs beside the page in a world of its own, as the helper does. */
import { cluesOf } from '../../../lib/form/page/clues.ts'
import { survey } from '../../../lib/form/page/controls.ts'
import { fill } from '../../../lib/form/fill/fill.ts'
import { plan } from '../../../lib/form/fill/plan.ts'
import type { Binding, Clues, FormMap, ReceiptLine } from '../../../lib/form/schema.ts'
import type { Material } from '../../../lib/form/material.ts'
import { generator } from '../../random.ts'
import { offerExtra } from '../../../lib/form/kinds/write-extra.ts'

offerExtra()

type Random = () => number
const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)] as T
const chance = (random: Random, share: number): boolean => random() < share

const labels = [
  'CFM50',
  'CFM50',
  'Street address',
  'City',
  'Licence number',
  'Date of test',
  '',
  ' ',
  '*',
  'a:b (c) [d]',
  'x'.repeat(400),
  '\u202Emalov',
  '🏠 Haus',
  '<b>Name</b>',
  'Name\u00A0*',
  '50',
  '#',
  'I certify that',
  'Before work',
  'After work',
  'toString',
  '__proto__',
]
const attributes: readonly [name: string, ...values: string[]][] = [
  ['id', 'a', 'a', 'b', 'value', 'form', '1', 'a b'],
  ['name', 'parentNode', 'id', 'x', 'x[0]', 'elements', ''],
  ['title', 'Title', ''],
  ['placeholder', 'mm/dd/yyyy', '0.0', 'Press Enter'],
  ['maxlength', '3', '0', '-1', 'many'],
  ['pattern', '[', '\\d+', '(?<a>.)'],
  ['min', '5', 'x'],
  ['step', '0.1', 'any', '0'],
  ['readonly', ''],
  ['disabled', ''],
  ['hidden', ''],
  ['inert', ''],
  ['required', ''],
  ['role', 'combobox', 'checkbox', 'spinbutton', 'slider', 'listbox', 'none', 'textbox', 'radiogroup'],
  ['aria-label', 'CFM50', ''],
  ['aria-labelledby', 'a', 'a b', 'none'],
  ['aria-describedby', 'a', 'none'],
  ['aria-hidden', 'true'],
  ['aria-invalid', 'true'],
  ['aria-readonly', 'true'],
  ['aria-haspopup', 'listbox', 'dialog', 'grid'],
  ['aria-valuenow', '3', 'x'],
  ['autocomplete', 'name', 'cc-number', 'off', ':'],
  ['data-field', 'cfm', 'x1', ']'],
  ['list', 'a'],
  ['form', 'a', 'none'],
  ['tabindex', '-1', '5'],
  ['class', 'chips', 'tag-input', 'x'],
  [
    'style',
    'opacity:0',
    'opacity:0.03',
    'position:absolute;left:-4000px',
    'width:0;height:0',
    'visibility:hidden',
    'display:none',
    'clip-path:inset(50%)',
    'position:fixed;top:-500px',
  ],
  ['contenteditable', 'true', 'false'],
]
const types = [
  'text',
  'text',
  'text',
  'search',
  'tel',
  'email',
  'number',
  'date',
  'checkbox',
  'radio',
  'password',
  'hidden',
  'file',
  'range',
  'color',
  'submit',
  'image',
  'unknown',
  'month',
  'time',
]

function control(random: Random): HTMLElement {
  const kind = pick(random, ['input', 'input', 'input', 'textarea', 'select', 'div'])
  const element = document.createElement(kind)
  if (element instanceof HTMLInputElement) element.setAttribute('type', pick(random, types))
  if (element instanceof HTMLSelectElement) {
    for (const text of ['', 'Calm', 'Windy', pick(random, ['Calm', 'Gusty', ''])]) element.append(new Option(text))
    element.multiple = chance(random, 0.1)
  }
  if (kind === 'div')
    element.setAttribute(
      pick(random, ['role', 'contenteditable']),
      pick(random, ['true', 'textbox', 'combobox', 'listbox', 'spinbutton', 'checkbox']),
    )
  for (let count = Math.floor(random() * 4); count > 0; count--) {
    const [name, ...values] = pick(random, attributes)
    element.setAttribute(name, pick(random, values))
  }
  return element
}

/** Fills a place with headings, labels and controls, some in shadow roots, fieldsets, tables and forms. */
function grow(random: Random, into: ParentNode & Node, depth: number): void {
  for (let count = 1 + Math.floor(random() * 5); count > 0; count--) {
    const shape = random()
    if (depth > 0 && shape < 0.3) {
      const box = document.createElement(
        pick(random, ['form', 'fieldset', 'section', 'table', 'label', 'div', 'p', 'x-box']),
      )
      into.append(box)
      const shadow = box.localName === 'x-box' || (box.localName === 'div' && chance(random, 0.3))
      grow(random, shadow ? box.attachShadow({ mode: 'open' }) : box, depth - 1)
    } else if (shape < 0.4) {
      const heading = document.createElement(pick(random, ['h2', 'h3', 'legend']))
      heading.textContent = pick(random, labels)
      into.append(heading)
    } else {
      const element = control(random)
      const label = document.createElement('label')
      label.textContent = pick(random, labels)
      if (chance(random, 0.5)) label.htmlFor = element.id || 'a'
      if (chance(random, 0.4)) label.append(element)
      into.append(label)
      if (!element.isConnected || !label.contains(element)) into.append(element)
    }
  }
}

function* everything(root: ParentNode): Generator<HTMLElement> {
  for (const each of root.querySelectorAll<HTMLElement>('*')) {
    yield each
    if (each.shadowRoot) yield* everything(each.shadowRoot)
  }
}

/** What an element holds, read without the code that is tested. */
function held(element: HTMLElement): string {
  if (element instanceof HTMLInputElement)
    return ['checkbox', 'radio'].includes(element.type) ? String(element.checked) : element.value
  if (element instanceof HTMLTextAreaElement) return element.value
  if (element instanceof HTMLSelectElement) return [...element.selectedOptions].map(({ label }) => label).join('; ')
  // One that can be typed into is drawn as a box all the same.
  if (element.role === 'checkbox') return String(element.ariaChecked === 'true')
  return element.isContentEditable && !element.parentElement?.isContentEditable ? element.innerText.trim() : ''
}

const isControl = (element: HTMLElement) =>
  element.matches('input, textarea, select, [contenteditable=true], [contenteditable=""]')

/** One thing that a page may do while it is filled. Texts of its own begin with m. */
function mutate(random: Random, root: HTMLElement): void {
  const all = [...everything(root)]
  const one = pick(random, all)
  const other = pick(random, all)
  if (!one || !other) return
  switch (
    pick(random, ['remove', 'redraw', 'swap', 'rename', 'hide', 'disable', 'clear', 'move', 'add', 'attribute'])
  ) {
    case 'remove':
      return one.remove()
    case 'redraw':
      // A copy of a control holds what the control held.
      return isControl(one) ? one.replaceWith(one.cloneNode(true)) : undefined
    case 'swap':
      if (
        one.localName === 'label' &&
        other.localName === 'label' &&
        one.childElementCount + other.childElementCount === 0
      )
        [one.textContent, other.textContent] = [other.textContent, one.textContent]
      return
    case 'rename':
      if (one.localName === 'label' && one.childElementCount === 0) one.textContent = pick(random, labels)
      return
    case 'hide':
      one.style.cssText = pick(random, [
        'opacity:0',
        'display:none',
        'position:absolute;left:-5000px',
        'clip-path:inset(50%)',
      ])
      return
    case 'disable':
      return void one.toggleAttribute('disabled')
    case 'clear':
      if (one instanceof HTMLInputElement && ['text', 'search', 'tel'].includes(one.type)) one.value = ''
      return
    case 'move':
      if (!one.contains(other) && other.localName !== 'input' && isControl(one)) other.parentNode?.append(one)
      return
    case 'add':
      return other.after(control(random))
    case 'attribute': {
      const [name, ...values] = pick(random, attributes)
      return one.setAttribute(name, pick(random, values))
    }
  }
}

const material: Material = { job: { id: 'j', name: 'j' }, items: {} }

function textFor(clues: Clues, id: string, random: Random): string {
  switch (clues.kind) {
    case 'select':
    case 'multiple':
    case 'radio':
      return pick(random, clues.options) ?? ''
    case 'checkbox':
    case 'toggle':
      return pick(random, ['checked', 'not checked'])
    case 'number':
    case 'slider':
    case 'spinbutton':
      return String(Math.floor(random() * 1e6))
    case 'date':
      return '2026-02-11'
    default:
      return `v-${id}`
  }
}

const outcomes: ReadonlySet<string> = new Set(['entered', 'differs', 'not found', 'refused', 'ambiguous'])

/** What an entered line must leave in a control of its kind. */
function leaves(clues: Clues, text: string): string {
  if (clues.kind === 'checkbox' || clues.kind === 'toggle') return String(text === 'checked')
  return clues.kind === 'radio' ? 'true' : text
}

async function onePage(seed: number): Promise<string[]> {
  const random = generator(seed)
  const root = document.createElement('main')
  document.body.replaceChildren(root)
  grow(random, root, 3)
  const found = survey(document)
    .controls.filter(() => chance(random, 0.8))
    .slice(0, 6)
  const bindings = found.map((one, at): Binding => {
    const clues = cluesOf(one)
    return {
      id: `${seed}-${at}`,
      control: clues,
      source: { from: 'text', text: textFor(clues, `${seed}-${at}`, random) },
    }
  })
  for (let count = Math.floor(random() * 3); count > 0; count--) mutate(random, root)
  const before = new Map([...everything(root)].map((each) => [each, held(each)]))
  const made = plan({ bindings }, material, document)
  // A plan is followed where the page moves a control to: every target that it ever had counts as planned.
  const targets = new Set([...made.targets.values()].flatMap(({ elements }) => elements))
  const note = made.targets.set.bind(made.targets)
  made.targets.set = (id, target) => {
    for (const each of target.elements) targets.add(each)
    return note(id, target)
  }
  const timer = setInterval(() => chance(random, 0.3) && mutate(random, root), 3)
  let lines: ReceiptLine[]
  try {
    lines = await fill(made, {
      chosen: new Set(bindings.map(({ id }) => id)),
      each: { quiet: 1, limit: 8 },
      last: { quiet: 4, limit: 20 },
      late: 0,
    })
  } finally {
    clearInterval(timer)
  }
  const wrong: string[] = []
  const say = (words: string) => wrong.push(`seed ${seed}: ${words}`)
  if (lines.length !== bindings.length) say(`${lines.length} lines for ${bindings.length} bindings`)
  const texts = new Set<string>()
  for (const line of lines) {
    const binding = bindings.find(({ id }) => id === line.binding)
    if (!binding) {
      say('a line of no binding')
      continue
    }
    if (!outcomes.has(line.outcome)) say(`outcome ${line.outcome}`)
    texts.add(leaves(binding.control, line.intended))
    const target = made.targets.get(line.binding)
    if (line.outcome !== 'entered' || !target) continue
    // Read at the same moment as the receipt's last look: nothing has run since.
    const holds = target.elements.map(held)
    const simple =
      ['text', 'textarea', 'select', 'checkbox', 'number', 'date'].includes(target.kind) && isControl(target.element)
    if (simple && !holds.includes(leaves(binding.control, line.intended)) && line.readBack === line.intended)
      say(`${target.kind} is called entered with “${line.intended}” and holds “${holds.join()}”`)
  }
  for (const each of everything(root)) {
    const now = held(each)
    if (!before.has(each) || before.get(each) === now || now === '') continue
    const planned = targets.has(each)
    const silent = each instanceof HTMLInputElement && ['radio', 'checkbox', 'range', 'color'].includes(each.type)
    // A text is only ever written whole or in part where a plan has it; the rest of a group of radios goes off by itself.
    if (!planned && !silent && [...texts].some((text) => text.startsWith('v-') && now.includes(text)))
      say(`${each.outerHTML.slice(0, 120)} was written and is in no plan`)
  }
  return wrong
}

/** Fills so many random pages; gives what went wrong, in words. */
export async function pages(from: number, count: number): Promise<string[]> {
  const wrong: string[] = []
  for (let seed = from; seed < from + count; seed++)
    try {
      wrong.push(...(await onePage(seed)))
    } catch (error) {
      wrong.push(`seed ${seed}: ${error instanceof Error ? error.stack : String(error)}`)
    }
  return wrong
}

/** Plans any maps on one page and on the next; gives what was thrown. */
export function maps(all: readonly FormMap[], from: number): string[] {
  const wrong: string[] = []
  for (const [at, map] of all.entries()) {
    if (at % 20 === 0) {
      const root = document.createElement('main')
      document.body.replaceChildren(root)
      grow(generator(from + at), root, 3)
    }
    try {
      const { lines } = plan(map, material, document)
      if (lines.length > map.bindings.length)
        wrong.push(`map ${from + at}: ${lines.length} lines for ${map.bindings.length} bindings`)
    } catch (error) {
      wrong.push(`map ${from + at}: ${error instanceof Error ? error.stack : String(error)}`)
    }
  }
  return wrong
}
