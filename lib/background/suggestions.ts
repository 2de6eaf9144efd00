/** The background's answer to a helper that asks what the controls of its page may ask for. */
import { suggestAll } from '../form/suggest-all.ts'
import type { Answer } from '../answers.ts'
import { suggestedSchema, suggestSchema } from '../messages.ts'
import { say } from '../words/say.ts'
import type { Sender } from './for-helper.ts'

/** Takes a message that asks for suggestions; undefined for any other. `self`: the id of this extension. */
export function answerSuggest(raw: unknown, sender: Sender, self: string): Promise<Answer> | undefined {
  const checked = suggestSchema.safeParse(raw)
  if (!checked.success) return undefined
  if (sender.id !== self || !sender.tab) return Promise.resolve({ ok: false, message: say`Only the helper is heard.` })
  // The helper has no schemas, for their weight: what it gets is checked before it leaves.
  const suggested = suggestedSchema.parse(suggestAll(checked.data.clues, checked.data.material))
  return Promise.resolve({ ok: true, suggested })
}
