/** Names of texts in the message files. */

/**
 * A short name for a text, the same wherever it is computed: FNV-1a, 32 bits, as up to six digits to the base 36.
 * Message files know no difference between upper and lower case.
 *
 * @example keyOf('Type a number.') // '1cstr7'
 */
export function keyOf(text: string): string {
  let hash = 0x811c9dc5
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193)
  return ((hash >>> 0) % 36 ** 6).toString(36)
}
