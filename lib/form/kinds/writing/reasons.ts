/** Why a control did not take a text. */
import { say } from '../../../words/say.ts'

/** The reason for which a choice may still succeed later: options can arrive after a request. */
export const noOption = (text: string): string => say`has no option “${text}”`

/** Whether a reason is that. */
export const isNoOption = (reason: string): boolean => reason.startsWith(noOption('\n').split('\n')[0]!)

/** For a page that takes nothing but a hand: the text stands on the copy list. */
export const byHand = say`the page takes only what a hand enters: do it by hand, the text is on the copy list`
