/** The book's answer to a message of the helper in a tab. */
import type { Answer } from '../messages/answers.ts'
import { bounds } from '../bounds.ts'
import { toBackgroundSchema } from '../messages/messages.ts'
import { BookError } from '../book/error.ts'
import { addFillLine, endFill, startFill, type WriteBasis } from '../book/fills.ts'
import { noteLate } from '../book/late.ts'
import { saveMap } from '../book/maps.ts'
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
  const tooLong = beyond(message)
  if (tooLong !== undefined) return refuse(tooLong)
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
      return { ok: true, entry: (await endFill(message.fill, message.document)).number }
    case 'fill-late': {
      const { fill, lines } = message
      return {
        ok: true,
        entry: (await noteLate(fill, lines, { engine, readings: fill.job.readings, write })).number,
      }
    }
    case 'open-book':
      await openBook(message.entry)
      return { ok: true }
  }
}

/** Why a message is more than any fill of a form needs; undefined for all others. What goes into file controls is apart. */
function beyond(message: unknown): string | undefined {
  const { files: _, fill, ...rest } = (message ?? {}) as { files?: unknown; fill?: unknown }
  const planned = (fill as { planned?: unknown[] } | undefined)?.planned?.length ?? 0
  if (planned > bounds.lines)
    return say`This plan has ${planned} lines, and the book takes ${bounds.lines} of one page: bind fewer controls in one form map.`
  const size = (JSON.stringify([fill, rest]) ?? '').length
  return size > bounds.message
    ? say`What was to be noted is ${Math.ceil(size / 1e6)} MB long, and the book takes ${bounds.message / 1e6} MB at a time: shorten the texts.`
    : undefined
}

function refuse(message: string): Answer {
  return { ok: false, message }
}
