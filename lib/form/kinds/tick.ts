/** Reading what is on or off. */
import { bareOn } from '../page/bare.ts'

/** Whether a box, switch, radio or option is on, native or drawn. */
export function isOn(element: Element): boolean {
  if (element.localName === 'input') return (element as HTMLInputElement).checked
  const said = ['aria-checked', 'aria-pressed', 'aria-selected'].map((name) => element.getAttribute(name))
  if (said.some((each) => each !== null)) return said.includes('true')
  return element.localName.includes('-') && bareOn(element)
}
