/** What the calculator has to know of the reader's language. */
import { readWithComma } from '../../units/read.ts'
import { language, say } from '../../words/say.ts'
import { marksOf } from '../in-locale.ts'

/** Names the language of the page's texts, and takes typed numbers as the browser's language writes them. */
export function speak(document: Document): void {
  document.documentElement.lang = say`en`
  readWithComma(marksOf(language()).decimal === ',')
}
