/** Reading what is on or off. */

export const checked = 'checked'
export const notChecked = 'not checked'

/** Whether a box, switch, radio or option is on, native or drawn. */
export function isOn(element: Element): boolean {
  if (element.localName === 'input') return (element as HTMLInputElement).checked
  return ['aria-checked', 'aria-pressed', 'aria-selected'].some((name) => element.getAttribute(name) === 'true')
}
