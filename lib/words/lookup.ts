/** What the extension has in place of `say.ts`: texts by their keys, from the message file of the browser's language. */
import { browser } from '../browser.ts'
import { termKeyOf } from './key.ts'

/** Built from the tagged templates of the sources. */
export const say = (key: string, ...values: (string | number)[]): string =>
  browser.i18n.getMessage(key, values.map(String))

export const shown = (text: string): string => browser.i18n.getMessage(termKeyOf(text)) || text

export const language = (): string => browser.i18n.getUILanguage()
