/** Canonical JSON (RFC 8785), in half of the time where a value is plain data. */
import canonicalize from 'canonicalize'

/** A copy with the keys of every object in order, or undefined where that does not make the JSON canonical. */
function inOrder(value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) throw notCanonical
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) return value.map(inOrder)
  if (Object.getPrototypeOf(value) !== Object.prototype) throw notCanonical
  const sorted: Record<string, unknown> = {}
  for (const key of Object.keys(value).toSorted()) {
    // A number as a key comes first in every object, and '__proto__' is none.
    if (/^\d|^__/.test(key)) throw notCanonical
    sorted[key] = inOrder((value as Record<string, unknown>)[key])
  }
  return sorted
}

const notCanonical = new Error('This has no short way to canonical JSON.')

/**
 * Canonical JSON. Numbers and texts are written as JSON.stringify does (RFC 8785, 3.2.2), so that only the order of keys is
 * left; what is not plain data goes the long way.
 * @throws Error when the value has no canonical form
 */
export function canonical(value: unknown): string | undefined {
  try {
    const text = JSON.stringify(inOrder(value)) as string | undefined
    // Half of a surrogate pair, which JSON.stringify escapes, has no canonical form: that is told there.
    if (text !== undefined && !/\\ud[89a-f]/.test(text)) return text
  } catch (error) {
    if (error !== notCanonical) throw error
  }
  return canonicalize(value)
}
