import { browser } from '../../browser.ts'
import { answerShape } from '../../messages/message-shapes.ts'
import type { Answer } from '../../messages/answers.ts'
import type { DockAsks, Extra, FromFrames, MeetAll, Suggest, ToBackground } from '../../messages/messages.ts'
import { fits } from '../../messages/shape.ts'
import { say } from '../../words/say.ts'

const gone = say`Gapsum does not answer: it was updated or switched off while this page was open. Reload the page and open Gapsum again.`

/** Sends to the background. Never throws: an extension that was updated or removed in the meantime is said in words. */
export async function send(message: ToBackground | FromFrames | DockAsks | Suggest | Extra | MeetAll): Promise<Answer> {
  try {
    const answer: unknown = await browser.runtime.sendMessage(message)
    return fits(answer, answerShape) ? (answer as Answer) : { ok: false, message: gone }
  } catch {
    return { ok: false, message: gone }
  }
}
