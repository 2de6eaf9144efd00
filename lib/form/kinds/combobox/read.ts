/** What a custom dropdown shows, and what the native list that it may hide holds. */
import { byId } from '../../page/dom.ts'
import { flatAll, flatText } from '../../page/flat.ts'
import { wrapperOf } from '../../page/face.ts'
import { nameOf, textIn } from '../../page/names.ts'
import { tidy } from '../../words.ts'

const aside =
  'button, label, legend, svg, [aria-hidden=true], [role=listbox], [role=option], [role=alert], [class*=placeholder], [data-placeholder]'

/** Text of an element without labels, prompts, signs and open lists. */
function ownText(element: Element): string {
  const copy = element.cloneNode(true) as Element
  for (const each of copy.querySelectorAll(aside)) each.remove()
  const text = [...copy.childNodes].map(textIn).join(' ')
  return tidy(text.replace(/[\u200B\uFEFF]/g, ''))
}

/** What is chosen in the list of a box that takes several, where the page has that list also while it is closed. */
function chosenIn(element: HTMLElement): string {
  const root = element.getRootNode() as Document | ShadowRoot
  const list = byId(root, element.getAttribute('aria-controls') ?? '')
  if (list?.getAttribute('aria-multiselectable') !== 'true') return ''
  return flatAll(list, '[role=option][aria-selected=true]')
    .map((each) => tidy(each.getAttribute('aria-label') ?? flatText(each)))
    .join('; ')
}

/** The value that the box shows; a prompt is none. */
export function boxText(element: HTMLElement): string {
  const several = chosenIn(element)
  if (several) return several
  if (element.localName === 'input') {
    const { value } = element as HTMLInputElement
    if (value) return value
    // Where the field is empty the chosen text may stand beside it; the name that may stand there too is no value.
    const text = ownText(wrapperOf(element))
    return text === nameOf(element) ? '' : text
  }
  if (element.matches('[data-placeholder], [class*=placeholder]')) return ''
  return element.querySelector<HTMLInputElement>('input:not([type=hidden])')?.value || ownText(element)
}

/** Label of what a native list holds that stands hidden behind the box; nothing when there is none. */
export function behindBox(element: HTMLElement): string | undefined {
  const select = wrapperOf(element).querySelector('select')
  if (!select || select === element) return undefined
  const option = select.options[select.selectedIndex]
  return option && option.value !== '' ? tidy(option.label || option.text) : ''
}
