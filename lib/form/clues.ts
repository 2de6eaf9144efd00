/** The clues by which a control is found again. */
import type { Control } from './controls.ts'
import { nameOf, textIn } from './names.ts'
import type { Clues } from './schema.ts'
import { tidy } from './words.ts'

const steady =
  /^(name|id|autocomplete|formcontrolname|ng-model|v-model|data-(test|qa|cy|field|name|key|label|bind|automation|question|column|model|path|control)[\w-]*)$/

const generic =
  /^(:?r|_r_|input|field|mui|ember|control|ctrl|id|el|element|text|textbox|select|react-select|radix|headlessui|downshift|gwt-uid|ext-gen|ext-comp|uid|form-control|mat-input|mat-select|cdk|q|wrapper|item|component)$/

/**
 * Whether an attribute looks numbered or drawn by a program anew at each load, so that it tells nothing the next time:
 * a counter behind a word that says nothing (`input-17`), four digits in a row, a token of mixed letters and digits.
 */
export function looksGenerated(value: string): boolean {
  if (/[0-9a-f]{8}-[0-9a-f]{4}-/i.test(value)) return true
  if (/^(:|«|_r_).*[:»_]$/.test(value)) return true
  if (/^(react-select|radix|headlessui|downshift|mat|cdk|mui|ember|ext)[-_:]\d/.test(value)) return true
  const counted = /^(.*?)[-_:.]?\d+$/.exec(value.toLowerCase())
  if (counted?.[1] !== undefined && (counted[1] === '' || generic.test(counted[1]))) return true
  return value.split(/[^A-Za-z0-9]+/).some((token) => {
    if (/\d{4,}/.test(token)) return true
    if (/^[0-9a-f]{8,}$/i.test(token) && /\d/.test(token)) return true
    return token.length >= 5 && (token.match(/\d+|[A-Za-z]+/g) ?? []).length >= 4
  })
}

function attributesOf(control: Control): Record<string, string> {
  const found: Record<string, string> = {}
  const { element } = control
  const root = element.getRootNode()
  const host = 'host' in root ? (root.host as Element) : undefined
  for (const { name, value } of element.attributes) {
    // The id of a radio names one option, not the group; every use of a component has the same ids inside.
    if (name === 'id' && (control.elements.length > 1 || host)) continue
    if (value && steady.test(name) && !looksGenerated(value)) found[name] = value
  }
  for (const { name, value } of host?.attributes ?? [])
    if (value && steady.test(name) && !looksGenerated(value)) found[`host ${name}`] = value
  return found
}

/** The options of a list that is always open. */
export function optionElements(list: Element): HTMLElement[] {
  return [...list.querySelectorAll<HTMLElement>('[role=option]')]
}

/** Labels of the options of a select, list or radio group as the page shows them. */
export function optionsOf(control: Control): string[] {
  if (control.far) return control.far.image.clues.options
  if (control.kind === 'listbox')
    return optionElements(control.element).map((each) => tidy(each.getAttribute('aria-label') ?? textIn(each)))
  if (control.kind === 'select' || control.kind === 'multiple')
    return [...(control.element as HTMLSelectElement).options].map((option) => tidy(option.label || option.text))
  if (control.kind === 'radio')
    return control.elements.map((radio) => nameOf(radio) || ((radio as HTMLInputElement).value ?? ''))
  return []
}

/** Names of the elements whose shadow roots hold the element, the outermost first. */
function shadowOf(element: Element): string[] {
  const hosts: string[] = []
  for (let root = element.getRootNode(); 'host' in root;) {
    const host = root.host as Element
    hosts.unshift(host.localName)
    root = host.getRootNode()
  }
  return hosts
}

export function cluesOf(control: Control): Clues {
  if (control.far) return control.far.image.clues
  const shadow = shadowOf(control.element)
  return {
    kind: control.kind,
    name: control.name,
    section: control.section,
    attributes: attributesOf(control),
    placeholder: (control.element as HTMLInputElement).placeholder ?? '',
    options: optionsOf(control).slice(0, 50),
    position: control.position,
    ...(shadow.length > 0 && { shadow }),
  }
}
