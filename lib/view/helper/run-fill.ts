/** Runs a fill: first the book hears of it, then the page is written, each line is noted, and the end is noted. */
import type { Answer } from '../../messages/answers.ts'
import { cut } from '../../bounds.ts'
import { browser } from '../../browser.ts'
import { fillPort } from '../../messages/fill-port.ts'
import { addressOf, serves } from '../../form/map/address.ts'
import { fill as fillPage } from '../../form/fill/fill.ts'
import { keptLine } from '../../form/fill/kept-line.ts'
import type { Material } from '../../form/material.ts'
import type { Plan } from '../../form/fill/plan.ts'
import type { FormMap, ReceiptLine } from '../../form/schema.ts'
import { say } from '../../words/say.ts'
import { fileFilled } from './filed.ts'
import { answerTo, keepUnnoted, type Noted } from './late.ts'
import { newId } from './new-id.ts'
import { send } from './send.ts'

export interface Filled {
  id: string
  kind: 'fill' | 'undo'
  plan: Plan
  lines: ReceiptLine[]
  /** Why it ended early, or why the book does not hold all of it; empty when all is well. */
  problem: string
  /** Number of the entry in the book, once it is known. */
  entry: number | undefined
  fill: Noted
  /** Whether the book still lacks some of the lines. */
  unnoted: boolean
}

const moved = say`the page has gone to another address, for which this form map is not`

/** A line to the background that ends with this page: it then closes the fill. */
function openLine(fill: string): () => void {
  try {
    const port = browser.runtime.connect({ name: fillPort + fill })
    const end = () => port.disconnect()
    // A page that is kept for going back holds its lines in some browsers.
    addEventListener('pagehide', end)
    return end
  } catch {
    return () => {}
  }
}

interface Run {
  material: Material
  map: FormMap
  plan: Plan
  chosen: ReadonlySet<string>
  /** The fill that is put back. */
  of: string | undefined
  /** The helper has closed. */
  closed: AbortSignal
  /** The person stopped the fill. */
  stopped: AbortSignal
  /** The book has noted it: the page is written from now on. */
  onStart: (total: number) => void
  onLine: (line: ReceiptLine) => void
}

/** What became of it; a sentence when the book did not note it, or the page is another one, and nothing was typed. */
export async function runFill(run: Run): Promise<Filled | string> {
  if (!serves(run.map, location.href)) return say`Nothing was typed: ${moved}. Open the plan anew from the toolbar.`
  const id = newId()
  const closeLine = openLine(id)
  try {
    return await noteAndFill(run, id)
  } finally {
    closeLine()
    void send({ type: 'meet-all', on: false })
  }
}

async function noteAndFill(run: Run, id: string): Promise<Filled | string> {
  const { material, map, plan, chosen, of, closed, stopped, onStart, onLine } = run
  const kind = of === undefined ? 'fill' : 'undo'
  const lines = plan.lines.filter(({ binding }) => chosen.has(binding))
  const fill: Noted = {
    id,
    started: new Date().toISOString(),
    kind,
    ...(of !== undefined && { of }),
    job: material.job,
    map: { id: map.id, name: map.name, version: map.version },
    page: { ...addressOf(location.href), title: cut(document.title) },
    ...(plan.steps && { step: { at: plan.steps.at, of: plan.steps.of } }),
    planned: lines.map(({ binding, control, section, source, text }) => ({ binding, control, section, source, text })),
  }
  const started = await answerTo({
    type: 'fill-started',
    fill,
    files: lines.flatMap(({ binding, state: is }) => {
      const file = plan.files?.get(binding)
      return file && is !== 'refused' ? [{ binding, ...file }] : []
    }),
  })
  if (!started.ok) return say`Nothing was typed, because the book could not note the fill. ${started.message}`
  onStart(lines.length)
  const notes = new Map<string, Promise<Answer>>()
  const heard = new Map<string, ReceiptLine>()
  let broke = ''
  let why: string | undefined
  const stop = new Promise<undefined>((resolve) => {
    stopped.addEventListener('abort', () => resolve(undefined))
  })
  const ready = async () => {
    if (!browser.runtime?.id) return say`Gapsum was updated or switched off meanwhile`
    if (!serves(map, location.href)) return moved
    const failed = (await Promise.all(notes.values())).find(({ ok }) => !ok)
    return failed && !failed.ok ? failed.message : undefined
  }
  await send({ type: 'meet-all', on: true })
  const written = await fillPage(plan, {
    chosen,
    // The book is waited for, but a person who stops is not kept.
    ready: async () => (why = await Promise.race([ready(), stop])),
    signal: AbortSignal.any([stopped, closed]),
    bring: () => send({ type: 'extra' }),
    onLine: (line) => {
      heard.set(line.binding, line)
      notes.set(line.binding, answerTo({ type: 'fill-line', fill: id, line: keptLine(line) }))
      onLine(line)
    },
  }).catch((error: unknown) => {
    // What was written stays written: it is shown and noted like any fill, with the reason why it ended.
    broke = say`The fill ended early: ${error instanceof Error ? error.message : String(error)} Lines not listed were not touched.`
    return [...heard.values()]
  })
  const filed = await fileFilled(written, plan)
  const done = filed?.lines ?? written
  for (const [at, line] of done.entries()) {
    if (line === written[at]) continue
    notes.set(line.binding, answerTo({ type: 'fill-line', fill: id, line: keptLine(line) }))
    onLine(line)
  }
  const noted = await Promise.all(notes.values())
  const ended = await answerTo({ type: 'fill-ended', fill: id, ...(filed?.document && { document: filed.document }) })
  const missed = noted.filter(({ ok }) => !ok).length
  const unnoted = missed > 0 || !ended.ok
  if (unnoted) keepUnnoted(fill, done)
  if (why !== undefined) broke = say`The fill stopped: ${why}`
  broke ||= filed?.problem ?? ''
  return {
    id,
    kind,
    plan,
    lines: done,
    problem: broke
      ? broke
      : !ended.ok
        ? say`The book may not hold all of this: ${ended.message}`
        : missed > 0
          ? say`The book did not take ${missed} of these lines.`
          : '',
    entry: ended.ok ? ended.entry : undefined,
    fill,
    unnoted,
  }
}
