/** Finds the texts in a source, with a parser. */
import { parseSync, Visitor } from 'vite'
import { keyOf, termKeyOf } from './key.ts'

export interface Text {
  tag: 'say' | 'term'
  key: string
  /** The text with $1 to $9 for its values, as message files write it. */
  message: string
  /** What stands before, between and after the values. */
  parts: string[]
  /** Where the template stands in the source, tag included. */
  start: number
  end: number
  /** Where each value stands. */
  values: { start: number; end: number }[]
}

/** Whether a source may hold any. */
export const imported = /\/(?:say|term)\.ts'/

/** The most values that message files have names for. */
const MOST = 9

/**
 * Every text of a source, in its order.
 *
 * @param path says how to parse it, and where a fault is
 * @throws SyntaxError when the source is none, or a text cannot stand in a message file
 */
export function textsOf(source: string, path: string): Text[] {
  if (!imported.test(source)) return []
  const { program, errors } = parseSync(path, source)
  if (errors[0]) throw new SyntaxError(`${path}: ${errors[0].message}`)
  const found: Text[] = []
  const fault = (text: string, what: string) => new SyntaxError(`${path}: “${text}” ${what}`)
  new Visitor({
    TaggedTemplateExpression({ tag, quasi, start, end }) {
      if (tag.type !== 'Identifier' || (tag.name !== 'say' && tag.name !== 'term')) return
      const parts = quasi.quasis.map(({ value }) => value.cooked ?? '')
      const whole = parts.join('…')
      if (parts.some((part) => part.includes('$'))) throw fault(whole, 'holds a $, which message files give a meaning.')
      if (quasi.expressions.length > MOST) throw fault(whole, `has more than ${MOST} values.`)
      // A browser would take $1$2 for the name of a placeholder.
      if (parts.slice(1, -1).includes('')) throw fault(whole, 'has two values side by side: make them one.')
      if (parts.slice(1).some((part) => /^\d/.test(part)))
        throw fault(whole, 'has a digit after a value: make it part of it.')
      if (tag.name === 'term' && parts.length > 1) throw fault(whole, 'has values; a term has none.')
      if (parts.length === 1 && !/\p{L}/u.test(whole)) throw fault(whole, 'holds no word.')
      const message = parts.reduce((text, part, at) => `${text}$${at}${part}`)
      found.push({
        tag: tag.name,
        key: tag.name === 'term' ? termKeyOf(message) : keyOf(message),
        message,
        parts,
        start,
        end,
        values: quasi.expressions.map((value) => ({ start: value.start, end: value.end })),
      })
    },
  }).visit(program)
  return found.toSorted((a, b) => a.start - b.start)
}
