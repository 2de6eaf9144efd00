/** Whether what is shown is in the browser's language. */
import { expect } from 'vitest'
import { english, read } from '../../lib/words/collect.ts'
import type { Surface } from './harness.ts'

/** Finds English sentences in a text that has to be in another language; a page may hold shorter words of its own. */
export function englishIn(language: string): (text: string) => string[] {
  const words = read(language)
  const foreign = Object.entries(english())
    .filter(([key, { message }]) => words[key]?.message !== message && /^\S+ \S+ [^$]+[.?]$/.test(message))
    .map(([, { message }]) => message.trim())
  return (text) => foreign.filter((sentence) => text.includes(sentence))
}

/** Every text of the message files, as the browser gives it to a page of the extension. */
export async function expectTexts(view: Surface, language: string): Promise<void> {
  const words = read(language)
  const keys = Object.keys(english())
  const shown = await view.page.evaluate((asked) => {
    const { i18n } = (
      globalThis as unknown as { chrome: { i18n: { getMessage: (key: string, values: string[]) => string } } }
    ).chrome
    return asked.map((key) => i18n.getMessage(key, ['1', '2', '3', '4', '5', '6', '7', '8', '9']))
  }, keys)
  expect(shown).toEqual(keys.map((key) => words[key]?.message.replaceAll(/\$(\d)/g, '$1')))
}
