import { checked, notChecked } from '../../form/tick-words.ts'
import { say } from '../../words/say.ts'

/** What a tick holds, or is to hold, in the reader's language; any other text as it is typed. */
export const tickWords = (text: string): string =>
  text === checked ? say`checked` : text === notChecked ? say`not checked` : text
