/** Elements as plain data, written as XML and read from it. */

export interface Node {
  name: string
  attributes?: Readonly<Record<string, string>>
  /** Either text or elements. */
  content: string | readonly Node[]
}

/** An element, or nothing when it would hold nothing. */
export function node(name: string, content: string | readonly (Node | undefined)[] | undefined): Node | undefined {
  if (content === undefined || content.length === 0) return undefined
  if (typeof content === 'string') return { name, content }
  const children = content.filter((child) => child !== undefined)
  return children.length === 0 ? undefined : { name, content: children }
}

export const withAttribute = (name: string, key: string, value: string): Node => ({
  name,
  attributes: { [key]: value },
  content: '',
})

// oxlint-disable-next-line no-control-regex -- the very characters that XML 1.0 cannot hold
const unwritable = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g
const marks: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  '\r': '&#13;',
  '\n': '&#10;',
  '\t': '&#9;',
}

/** Text as XML 1.0 holds it; characters it has no way to hold are left out. */
const escaped = (text: string): string =>
  text
    .toWellFormed()
    .replaceAll(unwritable, '')
    .replaceAll(/[&<>"\r\n\t]/g, (mark) => marks[mark] ?? mark)

export function writeNode({ name, attributes = {}, content }: Node, indent = ''): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(value)}"`)
  const start = `${indent}<${name}${written.join('')}`
  if (content.length === 0) return `${start}/>\n`
  if (typeof content === 'string') return `${start}>${escaped(content)}</${name}>\n`
  return `${start}>\n${content.map((child) => writeNode(child, `${indent}  `)).join('')}${indent}</${name}>\n`
}

export const childrenOf = (element: Element, name?: string): Element[] =>
  Array.from(element.childNodes).filter(
    (child): child is Element => child.nodeType === 1 && (name === undefined || (child as Element).localName === name),
  )

/** The elements at the end of a path. */
export const allAt = (element: Element, ...path: string[]): Element[] =>
  path.reduce<Element[]>((found, name) => found.flatMap((one) => childrenOf(one, name)), [element])

/** The text at the end of a path, or nothing when it is not there or empty. */
export function textAt(element: Element, ...path: string[]): string | undefined {
  const text = allAt(element, ...path)[0]?.textContent?.trim()
  return text ? text : undefined
}
