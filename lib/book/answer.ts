/** The book's answer to a message of the helper in a tab. */
import type { Answer } from '../answers.ts'
import { toBackgroundSchema } from '../messages.ts'
import { BookError } from './error.ts'
import { addFillLine, endFill, startFill, type WriteBasis } from './fills.ts'
import { saveMap } from './maps.ts'
import { say } from '../words/say.ts'

export type Sender = { id?: string | undefined; tab?: { id?: number | undefined } | undefined }

export type Surroundings = {
  /** Id of this extension. */
  self: string
  /** Version of this extension. */
  engine: string
  openBook: (entry: number | undefined) => Promise<void>
  /** Writes out what stands behind the texts of a fill. */
  write?: WriteBasis | undefined
}

/** Checks who sends and what, and does it. Never throws: a failure is an answer in words. */
export async function answer(message: unknown, sender: Sender, surroundings: Surroundings): Promise<Answer> {
  if (sender.id !== surroundings.self || !sender.tab) {
    return refuse(say`The book takes messages only from this extension’s own helper in a tab.`)
  }
  const checked = toBackgroundSchema.safeParse(message)
  if (!checked.success) {
    const path = checked.error.issues[0]?.path.join('.') || 'type'
    return refuse(say`The book did not understand the helper (${path}). Reload the page and open Gapsum again.`)
  }
  try {
    return await act(checked.data, sender.tab.id, surroundings)
  } catch (error) {
    if (error instanceof BookError) return refuse(error.message)
    const reason = error instanceof Error ? error.message : String(error)
    return refuse(say`The book could not be written: ${reason} Free some disk space, then try again.`)
  }
}

async function act(
  message: ReturnType<typeof toBackgroundSchema.parse>,
  tab: number | undefined,
  { engine, openBook, write }: Surroundings,
): Promise<Answer> {
  switch (message.type) {
    case 'save-map': {
      const { id, version } = await saveMap(message.map)
      return { ok: true, map: { id, version } }
    }
    case 'fill-started':
      await startFill(message.fill, { engine, tab, files: message.files, readings: message.fill.job.readings, write })
      return { ok: true }
    case 'fill-line':
      await addFillLine(message.fill, message.line)
      return { ok: true }
    case 'fill-ended':
      return { ok: true, entry: (await endFill(message.fill)).number }
    case 'open-book':
      await openBook(message.entry)
      return { ok: true }
  }
}

function refuse(message: string): Answer {
  return { ok: false, message }
}
