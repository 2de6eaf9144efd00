/** Canonical JSON (RFC 8785), in half of the time where a value is plain data. */
import canonicalize from 'canonicalize'

/**
 * The value with the keys of every object in order: itself where they are so already, as in what was read from canonical
 * JSON, else a copy of what is not.
 * @throws notCanonical where that does not make the JSON canonical
 */
function inOrder(value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) throw notCanonical
  if (typeof value !== 'object' || value === null) return value
  return Array.isArray(value) ? listInOrder(value) : objectInOrder(value as Record<string, unknown>)
}

function listInOrder(list: unknown[]): unknown[] {
  let copy: unknown[] | undefined
  for (let at = 0; at < list.length; at++) {
    const one = inOrder(list[at])
    if (one === list[at]) continue
    copy ??= [...list]
    copy[at] = one
  }
  return copy ?? list
}

function objectInOrder(value: Record<string, unknown>): object {
  if (Object.getPrototypeOf(value) !== Object.prototype) throw notCanonical
  const keys = Object.keys(value)
  let same = true
  for (let at = 0; at < keys.length; at++) {
    const key = keys[at]!
    if (isApart(key)) throw notCanonical
    if (at > 0 && key < keys[at - 1]!) same = false
  }
  if (same) {
    let copy: Record<string, unknown> | undefined
    for (const key of keys) {
      const one = inOrder(value[key])
      if (one === value[key]) continue
      copy ??= { ...value }
      copy[key] = one
    }
    return copy ?? value
  }
  const sorted: Record<string, unknown> = {}
  for (const key of keys.toSorted()) sorted[key] = inOrder(value[key])
  return sorted
}

/** A number as a key comes first in every object, and '__proto__' is none. */
function isApart(key: string): boolean {
  const first = key.charCodeAt(0)
  return (first >= 0x30 && first <= 0x39) || (first === 0x5f && key.charCodeAt(1) === 0x5f)
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
