/** What the extension has in place of `say.ts`: texts by their keys, from the message file of the browser's language. */
import { browser } from '../browser.ts'
import { keyOf, termKeyOf } from './key.ts'

/**
 * Built from the tagged templates of the sources. Never empty: after an update of the extension a helper that is still
 * open finds no message, and what refuses a control must not read as if nothing were wrong.
 */
export function say(key: string, ...values: (string | number)[]): string {
  try {
    return browser.i18n.getMessage(key, values.map(String)) || key
  } catch {
    return key
  }
}

export const shown = (text: string): string => browser.i18n.getMessage(termKeyOf(text)) || text

let known: string | undefined

/**
 * The browser's own language, with its region. Where the texts come in another one that is not the last resort, theirs.
 * It stays while a page stands, and is asked for with every number: the browser is asked once.
 */
export function language(): string {
  if (known !== undefined) return known
  const texts = browser.i18n.getMessage(keyOf('en'))
  const own = browser.i18n.getUILanguage()
  known = texts === 'en' || own.startsWith(texts) ? own : texts
  return known
}
