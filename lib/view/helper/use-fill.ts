import { useCallback, useRef, useState } from 'preact/hooks'
import { browser } from '../../browser.ts'
import { cut } from '../../bounds.ts'
import { fillPort } from '../../fill-port.ts'
import { addressOf, serves } from '../../form/address.ts'
import { fill as fillPage } from '../../form/fill.ts'
import { kept } from '../../form/kept.ts'
import { keptLine } from '../../form/kept-line.ts'
import type { Material } from '../../form/material.ts'
import type { Plan } from '../../form/plan.ts'
import type { FormMap, ReceiptLine } from '../../form/schema.ts'
import type { Answer } from '../../answers.ts'
import type { ToBackground } from '../../messages.ts'
import { newId } from './new-id.ts'
import { send } from './send.ts'
import { useShell } from './shell.ts'
import { say } from '../../words/say.ts'

/** A fill as the book hears of it. */
type Noted = Extract<ToBackground, { type: 'fill-started' }>['fill']

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

declare global {
  /** Lines that the book did not take, left by a copy of the helper that was updated meanwhile; the next one notes them. */
  var gapsumUnnoted: { fill: Noted; lines: ReceiptLine[] }[] | undefined
}

const lateMessage = (fill: Noted, lines: readonly ReceiptLine[]): ToBackground => ({
  type: 'fill-late',
  fill,
  lines: lines.map((line) => keptLine(line)),
})

/** Has the book note lines that it lacks, or that the page has changed since. */
export const noteLate = (fill: Noted, lines: readonly ReceiptLine[]): Promise<Answer> =>
  answerTo(lateMessage(fill, lines))

function keepUnnoted(fill: Noted, lines: ReceiptLine[]): void {
  globalThis.gapsumUnnoted = [...(kept('gapsumUnnoted') ?? []), { fill, lines }]
}

/** Notes what an earlier copy of the helper could not. */
export async function noteLeft(): Promise<void> {
  const left = kept('gapsumUnnoted') ?? []
  globalThis.gapsumUnnoted = []
  for (const { fill, lines } of left) if (!(await noteLate(fill, lines)).ok) keepUnnoted(fill, lines)
}

export type FillState =
  | { at: 'rest' }
  /** The book hears of it. */
  | { at: 'noting' }
  | { at: 'filling'; lines: ReceiptLine[]; total: number; stopping: boolean }
  | { at: 'problem'; message: string }

/** So long the book may be silent, in seconds. */
const patience = 15

/** What the book answers, or that it does not: whoever pressed a button must not wait for ever. */
function answerTo(message: ToBackground): Promise<Answer> {
  const words = say`It has not answered for ${patience} seconds. Try again; if it stays silent, reload the page.`
  const silence = new Promise<Answer>((resolve) => {
    setTimeout(resolve, patience * 1000, { ok: false, message: words })
  })
  return Promise.race([send(message), silence])
}

const moved = say`the page has gone to another address, for which this form map is not`

interface Start {
  plan: Plan
  chosen: ReadonlySet<string>
  /** The fill that is put back. */
  of?: string
}

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

/** Runs a fill: first the book hears of it, then the page is written, each line is noted, and the end is noted. */
export function useFill({ material, map }: { material: Material; map: FormMap }) {
  const { signal, setBusy } = useShell()
  const [state, setState] = useState<FillState>({ at: 'rest' })
  const stopper = useRef<AbortController | undefined>(undefined)
  const running = useRef(false)

  const start = useCallback(
    async ({ plan, chosen, of }: Start): Promise<Filled | undefined> => {
      // A second press before the book has answered the first.
      if (running.current) return undefined
      running.current = true
      setState({ at: 'noting' })
      const id = newId()
      const kind = of === undefined ? 'fill' : 'undo'
      const lines = plan.lines.filter(({ binding }) => chosen.has(binding))
      if (!serves(map, location.href)) {
        running.current = false
        setState({ at: 'problem', message: say`Nothing was typed: ${moved}. Open the plan anew from the toolbar.` })
        return undefined
      }
      setBusy(true)
      const closeLine = openLine(id)
      try {
        const fill: Noted = {
          id,
          started: new Date().toISOString(),
          kind,
          ...(of !== undefined && { of }),
          job: material.job,
          map: { id: map.id, name: map.name, version: map.version },
          page: { ...addressOf(location.href), title: cut(document.title) },
          ...(plan.steps && { step: { at: plan.steps.at, of: plan.steps.of } }),
          planned: lines.map(({ binding, control, section, source, text }) => ({
            binding,
            control,
            section,
            source,
            text,
          })),
        }
        const started = await answerTo({
          type: 'fill-started',
          fill,
          files: lines.flatMap(({ binding, state: is }) => {
            const file = plan.files?.get(binding)
            return file && is !== 'refused' ? [{ binding, ...file }] : []
          }),
        })
        if (!started.ok) {
          setState({
            at: 'problem',
            message: say`Nothing was typed, because the book could not note the fill. ${started.message}`,
          })
          return undefined
        }
        const stop = new AbortController()
        stopper.current = stop
        setState({ at: 'filling', lines: [], total: lines.length, stopping: false })
        const notes = new Map<string, Promise<Answer>>()
        const heard = new Map<string, ReceiptLine>()
        let broke = ''
        let why: string | undefined
        const stopped = new Promise<undefined>((resolve) => {
          stop.signal.addEventListener('abort', () => resolve(undefined))
        })
        const ready = async () => {
          if (!browser.runtime?.id) return say`Gapsum was updated or switched off meanwhile`
          if (!serves(map, location.href)) return moved
          const failed = (await Promise.all(notes.values())).find(({ ok }) => !ok)
          return failed && !failed.ok ? failed.message : undefined
        }
        await send({ type: 'meet-all', on: true })
        const done = await fillPage(plan, {
          chosen,
          // The book is waited for, but a person who stops is not kept.
          ready: async () => (why = await Promise.race([ready(), stopped])),
          signal: AbortSignal.any([stop.signal, signal]),
          bring: () => send({ type: 'extra' }),
          onLine: (line) => {
            heard.set(line.binding, line)
            notes.set(line.binding, answerTo({ type: 'fill-line', fill: id, line: keptLine(line) }))
            setState((before) =>
              before.at === 'filling'
                ? { ...before, lines: [...before.lines.filter(({ binding }) => binding !== line.binding), line] }
                : before,
            )
          },
        }).catch((error: unknown) => {
          // What was written stays written: it is shown and noted like any fill, with the reason why it ended.
          broke = say`The fill ended early: ${error instanceof Error ? error.message : String(error)} Lines not listed were not touched.`
          return [...heard.values()]
        })
        const noted = await Promise.all(notes.values())
        const ended = await answerTo({ type: 'fill-ended', fill: id })
        setState({ at: 'rest' })
        const missed = noted.filter(({ ok }) => !ok).length
        const unnoted = missed > 0 || !ended.ok
        if (unnoted) keepUnnoted(fill, done)
        if (why !== undefined) broke = say`The fill stopped: ${why}`
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
      } finally {
        closeLine()
        void send({ type: 'meet-all', on: false })
        running.current = false
        setBusy(false)
      }
    },
    [material, map, signal, setBusy],
  )

  const stop = useCallback(() => {
    stopper.current?.abort()
    setState((before) => (before.at === 'filling' ? { ...before, stopping: true } : before))
  }, [])

  return { state, start, stop }
}
