/** Why a control did not take a text. */
import { say } from '../../../words/say.ts'

/** Start of the reason for which a choice may still succeed later: options can arrive after a request. */
export const noOption = say`has no option`

/** For a page that takes nothing but a hand: the text stands on the copy list. */
export const byHand = say`the page takes only what a hand enters: do it by hand, the text is on the copy list`
