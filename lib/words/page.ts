/** What a page of the extension has to know of the reader's language. */
import { readWithComma } from '../units/read.ts'
import { marksOf } from '../view/in-locale.ts'
import { language, say } from './say.ts'

/** Names the language of the page's texts, and takes typed numbers as the browser's language writes them. */
export function speak(document: Document): void {
  document.documentElement.lang = say`en`
  readWithComma(marksOf(language()).decimal === ',')
}
