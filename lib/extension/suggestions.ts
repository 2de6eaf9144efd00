/** The background's answer to a helper that asks what the controls of its page may ask for. */
import { suggesting } from '../form/map/suggest-all.ts'
import type { Answer } from '../messages/answers.ts'
import { suggestedSchema, suggestSchema } from '../messages/messages.ts'
import { say } from '../words/say.ts'
import type { Sender } from './for-helper.ts'

/** Takes a message that asks for suggestions; undefined for any other. `self`: the id of this extension. */
export function answerSuggest(raw: unknown, sender: Sender, self: string): Promise<Answer> | undefined {
  const checked = suggestSchema.safeParse(raw)
  if (!checked.success) return undefined
  if (sender.id !== self || !sender.tab) return Promise.resolve({ ok: false, message: say`Only the helper is heard.` })
  return unhurried(suggesting(checked.data.clues, checked.data.material)).then((suggested) => ({
    ok: true,
    // The helper has no schemas, for their weight: what it gets is checked before it leaves.
    suggested: suggestedSchema.parse(suggested),
  }))
}

/** Works so long at a stretch, in ms; then whatever else the background was asked for has its turn. */
const stretch = 30

async function unhurried<T>(work: Generator<void, T>): Promise<T> {
  let since = performance.now()
  for (;;) {
    const { done, value } = work.next()
    if (done) return value
    if (performance.now() - since < stretch) continue
    await new Promise((resolve) => {
      setTimeout(resolve)
    })
    since = performance.now()
  }
}
