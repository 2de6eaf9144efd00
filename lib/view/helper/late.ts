/** Has the book note what it did not take while it was written, or what the page has changed since. */
import type { Answer } from '../../messages/answers.ts'
import { kept } from '../../form/kept.ts'
import { keptLine } from '../../form/fill/kept-line.ts'
import type { ReceiptLine } from '../../form/schema.ts'
import type { ToBackground } from '../../messages/messages.ts'
import { say } from '../../words/say.ts'
import { send } from './send.ts'

/** A fill as the book hears of it. */
export type Noted = Extract<ToBackground, { type: 'fill-started' }>['fill']

declare global {
  /** Lines that the book did not take; they are noted when a plan is opened next. */
  var gapsumUnnoted: { fill: Noted; lines: ReceiptLine[] }[] | undefined
}

/** So long the book may be silent, in seconds. */
const patience = 15

/** What the book answers, or that it does not: whoever pressed a button must not wait for ever. */
export function answerTo(message: ToBackground): Promise<Answer> {
  const words = say`It has not answered for ${patience} seconds. Try again; if it stays silent, reload the page.`
  const silence = new Promise<Answer>((resolve) => {
    setTimeout(resolve, patience * 1000, { ok: false, message: words })
  })
  return Promise.race([send(message), silence])
}

/** Has the book note lines of a fill. */
export const noteLate = (fill: Noted, lines: readonly ReceiptLine[]): Promise<Answer> =>
  answerTo({ type: 'fill-late', fill, lines: lines.map((line) => keptLine(line)) })

/** Keeps lines that the book did not take, for whoever comes next. */
export function keepUnnoted(fill: Noted, lines: ReceiptLine[]): void {
  globalThis.gapsumUnnoted = [...(kept('gapsumUnnoted') ?? []), { fill, lines }]
}

/** Forgets what was kept: the book has it by now. */
export function forgetUnnoted(): void {
  globalThis.gapsumUnnoted = []
}

/** Notes what the book did not take before. */
export async function noteLeft(): Promise<void> {
  const left = kept('gapsumUnnoted') ?? []
  forgetUnnoted()
  for (const { fill, lines } of left) if (!(await noteLate(fill, lines)).ok) keepUnnoted(fill, lines)
}
