/** What may lie over a control, and whether one sees through it. */
import { is } from './dom.ts'
import { ownHosts } from './own-host.ts'

/** Share of a colour that is seen, 0 to 1, by the form in which browsers give it. */
export function alphaOf(color: string): number {
  if (color === 'transparent') return 0
  const found = /^rgba|\//.test(color) && /[,/]\s*([\d.]+)(%?)\s*\)$/.exec(color)
  return found ? Number(found[1]) / (found[2] ? 100 : 1) : 1
}

/** Share of what is drawn with this style that is seen, 0 to 1: by opacity, filter, mask and blending. */
export function shareOf(style: CSSStyleDeclaration): number {
  const { opacity, filter, maskImage, mixBlendMode } = style
  const amount = (name: string) => Number(new RegExp(`\\b${name}\\(([\\d.]+)`).exec(filter)?.[1] ?? 1)
  const gone =
    filter.includes('url(') ||
    amount('brightness') < 0.2 ||
    amount('contrast') < 0.2 ||
    (filter.includes('blur(') && amount('blur') > 6) ||
    mixBlendMode !== 'normal' ||
    // Parts that scroll often fade out at their ends; nothing else of a form is masked.
    (maskImage !== 'none' && !/auto|scroll/.test(style.overflow))
  return gone ? 0 : Number(opacity) * amount('opacity')
}

/** Whether what lies under something of this style cannot be made out. */
const hides = (style: CSSStyleDeclaration): boolean =>
  alphaOf(style.backgroundColor) >= 0.5 || style.backgroundImage !== 'none' || style.backdropFilter !== 'none'

/** What a page draws before or after the content of an element, lifted out of its line: over all of it, perhaps. */
export function lifted(element: Element): CSSStyleDeclaration[] {
  return ['::before', '::after']
    .map((part) => getComputedStyle(element, part))
    .filter(({ content, position }) => !content.startsWith('no') && /absolute|fixed/.test(position))
}

const solid = 'img, video, canvas, iframe, object, embed'

/** Whether the element, or what it draws around its content, hides what lies under it. `share`: of it that is seen. */
export function opaque(element: Element, share: number): boolean {
  if (share < 0.5) return false
  if (hides(getComputedStyle(element)) || is(element, solid)) return true
  return lifted(element).some((style) => Number(style.opacity) >= 0.5 && hides(style))
}

/** Whether something in the top layer hides the whole page behind it; nothing meets such a sheet. */
export function sheeted(document: Document): boolean {
  return [...document.querySelectorAll(':popover-open, :modal')].some((each) => {
    const style = getComputedStyle(each, '::backdrop')
    return !ownHosts.has(each) && Number(style.opacity) >= 0.5 && hides(style)
  })
}

/** Whether the text of a field is written so that nobody can read it. */
export function unreadable(element: Element): boolean {
  if (!is(element, 'input, textarea') || is(element, '[type=checkbox], [type=radio], [type=range], [type=file]'))
    return false
  const { color, fontSize, textIndent, webkitTextFillColor } = getComputedStyle(element)
  return (
    alphaOf(color) < 0.1 ||
    alphaOf(webkitTextFillColor) < 0.1 ||
    Number.parseFloat(fontSize) < 4 ||
    Math.abs(Number.parseFloat(textIndent)) > 300
  )
}
