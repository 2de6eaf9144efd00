/** The clues by which a control is found again. */
import { cut, mostAttribute } from '../../bounds.ts'
import type { Control } from './controls.ts'
import { nameOf, textIn } from './names.ts'
import type { Clues } from '../schema.ts'
import { tidy, words } from '../words.ts'

/** Attributes by which pages name a field: those of the standards, those for tests, and any own one called name or model. */
const steady =
  /^(id|autocomplete|[\w-]*(name|model)|data-(test|qa|cy|field|key|label|bind|automation|question|column|path|control)[\w-]*)$/

const generic =
  /^(:?r|_r_|input|field|control|ctrl|id|el|element|text|textbox|select|uid|form-control|q|wrapper|item|component)$/

/**
 * Whether an attribute looks numbered or drawn by a program anew at each load, so that it tells nothing the next time:
 * a counter behind a word that says nothing (`input-17`), four digits in a row, a token of mixed letters and digits.
 * With what the page says of the control, also a counter among words that stand nowhere in it (`box-3-inner`).
 */
export function looksGenerated(value: string, said?: string): boolean {
  // Nobody gives a control a name as long as this.
  if (value.length > mostAttribute) return true
  if (/[0-9a-f]{8}-[0-9a-f]{4}-/i.test(value)) return true
  if (/^(:|«|_r_).*[:»_]$/.test(value)) return true
  const counted = /^(.*?)[-_:.]?\d+$/.exec(value.toLowerCase())
  if (counted?.[1] !== undefined && (counted[1] === '' || generic.test(counted[1]))) return true
  if (said !== undefined && /(^|[-_:.«])[a-z]?\d+([-_:.»]|$)/.test(value)) {
    const known = words(said)
    const own = words(value.replaceAll(/([a-z])([A-Z])/g, '$1 $2').replaceAll('_', ' ')).filter((word) =>
      /\p{L}{2}/u.test(word),
    )
    if (!own.some((word) => known.some((each) => each.startsWith(word) || word.startsWith(each)))) return true
  }
  return value.split(/[^A-Za-z0-9]+/).some((token) => {
    if (/\d{4,}/.test(token)) return true
    if (/^[0-9a-f]{8,}$/i.test(token) && /\d/.test(token)) return true
    return token.length >= 5 && (token.match(/\d+|[A-Za-z]+/g) ?? []).length >= 4
  })
}

function attributesOf(control: Control): Record<string, string> {
  const found: Record<string, string> = {}
  const { element } = control
  const said = `${control.name} ${control.section}`
  const root = element.getRootNode()
  const host = 'host' in root ? (root.host as Element) : undefined
  const tells = (name: string, value: string) =>
    value !== '' && steady.test(name) && !looksGenerated(value, name === 'id' ? said : undefined)
  for (const { name, value } of element.attributes) {
    // The id of a radio names one option, not the group; every use of a component has the same ids inside.
    if (name === 'id' && (control.elements.length > 1 || host)) continue
    if (tells(name, value)) found[name] = value
  }
  for (const { name, value } of host?.attributes ?? []) if (tells(name, value)) found[`host ${name}`] = value
  return found
}

/** The options of a list that is always open. */
export function optionElements(list: Element): HTMLElement[] {
  return [...list.querySelectorAll<HTMLElement>('[role=option]')]
}

export const optionLabel = (option: Element): string => cut(tidy(option.getAttribute('aria-label') ?? textIn(option)))

/** Whether a list draws only those options that are in view: each says then how many there are, or that nobody knows. */
function drawnInPart(options: readonly Element[]): boolean {
  const size = Number(options[0]?.getAttribute('aria-setsize'))
  return size < 0 || size > options.length
}

/** Labels of the options of a select, list or radio group as the page shows them; none where they are drawn in part. */
export function optionsOf(control: Control): string[] {
  if (control.far) return control.far.image.clues.options
  if (control.kind === 'listbox') {
    const options = optionElements(control.element)
    return drawnInPart(options) ? [] : options.map(optionLabel)
  }
  if (control.kind === 'select' || control.kind === 'multiple')
    return [...(control.element as HTMLSelectElement).options].map((option) => cut(tidy(option.label || option.text)))
  if (control.kind === 'radio')
    return control.elements.map((radio) => nameOf(radio) || cut((radio as HTMLInputElement).value ?? ''))
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
    placeholder: cut((control.element as HTMLInputElement).placeholder ?? ''),
    options: optionsOf(control).slice(0, 50),
    position: control.position,
    ...(shadow.length > 0 && { shadow }),
  }
}
