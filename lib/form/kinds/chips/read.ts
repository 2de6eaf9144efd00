/** The chips around a text field. */
import { wrapperOf } from '../../page/face.ts'
import { tidy } from '../../words.ts'

/** Texts that stand in the box of the field, without labels and the signs that remove a chip. */
export function chipTexts(input: HTMLElement): string[] {
  const box = wrapperOf(input, 4)
  const skip =
    'label, legend, button, svg, [aria-hidden=true], [class*=remove], [class*=close], [class*=helper], p, small'
  const texts: string[] = []
  const visit = (node: Node): void => {
    if (node.nodeType === Node.TEXT_NODE) {
      const text = tidy(node.textContent ?? '').replace(/\s*[×✕✖]$/, '')
      if (text) texts.push(text)
      return
    }
    if (node === input || (node.nodeType === Node.ELEMENT_NODE && (node as Element).matches(skip))) return
    for (const child of node.childNodes) visit(child)
  }
  for (const child of box.childNodes) visit(child)
  return texts
}
