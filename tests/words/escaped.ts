/** Finds texts that people read and that no message file can hold: those that bear neither `say` nor `term`. */
import { parseSync, Visitor } from 'vite'

/** Attributes of elements, and properties of objects, that people read. */
const attributes = new Set(['title', 'label', 'placeholder', 'alt', 'aria-label', 'hint', 'closeLabel', 'summary'])
const properties = new Set(
  ['text', 'message', 'label', 'name', 'title', 'hint', 'note', 'expected', 'found'].concat([
    'words',
    'step',
    'reason',
    'waiting',
    'condition',
    'caution',
    'detail',
  ]),
)

/** Variables that are handed on as such a property. */
const variables = new Set(['text', 'message', 'found', 'expected', 'note', 'reason'])

/** Two letters in a row that are no symbol or unit: a word. */
const word = /\p{L}{2}/u
const symbols =
  /^(?:[\s\d.,:;()%±×·/^=−+–…^²³Δρ]|\b(?:Pa|kg|cfm\d*|CFM\d*|ACH50|EqLA|ELA|SLA|NL|NLA10|Qn|qE50|qF50|qE10|qE75|IECC|ASTM E\d+|ISO \d+|HPXML|ft|in|°F|Gapsum|SHA-256|ENGINE)\b)*$/

const isWord = (text: string): boolean => word.test(text) && !symbols.test(text)

/** What stands in an attribute, which a look at all that stands in braces would meet again. */
const attributeValues = new WeakSet<object>()

interface Part {
  type: string
  [key: string]: unknown
}

/** The texts that an expression may come to, as far as they stand in it. */
function textsIn(node: Part | null | undefined): string[] {
  switch (node?.type) {
    case 'Literal':
      return typeof node['value'] === 'string' ? [node['value']] : []
    case 'TemplateLiteral':
      return [(node['quasis'] as { value: { cooked: string } }[]).map(({ value }) => value.cooked).join('…')]
    case 'ConditionalExpression':
      return [...textsIn(node['consequent'] as Part), ...textsIn(node['alternate'] as Part)]
    case 'LogicalExpression':
      return [...textsIn(node['left'] as Part), ...textsIn(node['right'] as Part)]
    case 'JSXExpressionContainer':
      return textsIn(node['expression'] as Part)
    default:
      return []
  }
}

/** Every text of a source that a person reads and that is not marked. */
export function escaped(source: string, path: string): string[] {
  const { program } = parseSync(path, source)
  const found: string[] = []
  const add = (texts: readonly string[]) => found.push(...texts.map((text) => text.trim()).filter(isWord))
  new Visitor({
    JSXText: ({ value }) => add([value]),
    JSXExpressionContainer: (node) => {
      // What stands between tags is read; what stands in an attribute may be anything.
      if (!attributeValues.has(node)) add(textsIn(node as unknown as Part))
    },
    JSXAttribute: ({ name, value }) => {
      if (value) attributeValues.add(value)
      if (name.type === 'JSXIdentifier' && attributes.has(name.name)) add(textsIn(value as unknown as Part))
    },
    Property: ({ key, value, computed }) => {
      const called = key.type === 'Identifier' ? key.name : key.type === 'Literal' ? String(key.value) : ''
      if (!computed && properties.has(called)) add(textsIn(value as unknown as Part))
    },
    VariableDeclarator: ({ id, init }) => {
      if (id.type === 'Identifier' && variables.has(id.name)) add(textsIn(init as unknown as Part))
    },
  }).visit(program)
  return found
}
