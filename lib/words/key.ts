/** Names of texts in the message files. */

function hash(text: string): number {
  // FNV-1a, 32 bits.
  let found = 0x811c9dc5
  for (let at = 0; at < text.length; at++) found = Math.imul(found ^ text.charCodeAt(at), 0x01000193)
  return found >>> 0
}

/**
 * A short name for a text, the same wherever it is computed: at most five digits to the base 36, as message files know no
 * difference between upper and lower case.
 *
 * @example keyOf('Type a number.') // 'o55tz'
 */
export const keyOf = (text: string): string => (hash(text) % 36 ** 5).toString(36)

/**
 * The name of a word that is looked up while the program runs, perhaps with a text that a person typed: long enough that
 * no other text meets it by chance.
 *
 * @example termKeyOf('floor area') // 'tq5gi1m'
 */
export const termKeyOf = (text: string): string => `t${hash(text).toString(36)}`
