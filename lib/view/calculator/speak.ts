/** What the calculator has to know of the reader's language. */
import { say } from '../../words/say.ts'

/** Names the language of the page's texts. */
export function speak(document: Document): void {
  document.documentElement.lang = say`en`
}
