/**
 * Texts that people read. English stands in the code; the builds of the extension take `lookup.ts` in place of this file,
 * and every text from the message file of the browser's language.
 */

/**
 * A text with its values.
 *
 * @example say`${3} of ${5} points` // '3 of 5 points'
 */
export function say(texts: TemplateStringsArray, ...values: (string | number)[]): string {
  let text = texts[0] ?? ''
  for (let at = 0; at < values.length; at++) text += values[at] + (texts[at + 1] ?? '')
  return text
}

/** A term (`term.ts`) in the language of the reader; any other text as it is. */
export const shown = (text: string): string => text

/** The language that numbers and dates are written in. */
export const language = (): string => 'en'
