import type { FromDock, Side, Theme, ToDock } from '../../messages/dock-messages.ts'
import { forgetFrames } from '../../form/page/far.ts'
import type { ToHelper } from '../../messages/messages.ts'
import { browser } from '../../browser.ts'
import { say } from '../../words/say.ts'
import { sheetBelow } from './bring-into-view.ts'
import { closedOrigins } from './closed-origins.ts'
import { whenGone } from './gone.ts'
import { joinDock } from './join-dock.ts'
import { keepOnTop, type OnTop } from './keep-on-top.ts'
import { drawMarks, type Mark } from './page-marks.ts'
import { place } from './place.ts'
import { send } from './send.ts'

/** What the person opened the helper for. */
export type Task = Extract<ToHelper, { type: 'map' | 'plan' }>

/** Whether the task is shown now, or why not. */
export type Shown = { shown: true } | { shown: false; message: string }

/** What a part of the helper may do with its place. */
export interface Stage extends Pick<OnTop, 'know' | 'raise' | 'covered'> {
  host: HTMLElement
  /** Aborted when the helper is closed or shows something else. */
  signal: AbortSignal
  say: (message: ToDock) => void
  /** Draws outlines in place of those before. */
  mark: (marks: readonly Mark[]) => void
  /** Counts the screens. */
  view: () => number
  /** Gives the dock the keyboard. */
  focus: () => void
  /** While a fill runs, nothing else may replace what is shown. */
  setBusy: (busy: boolean) => void
  close: () => void
  /** Shows another task in the same place. */
  show: (task: Task) => void
}

/** One part of the helper: what it does with what the dock asks, and all it says to a dock that has come anew. */
export interface Part {
  hear: (message: FromDock) => void
  tell: () => void
}

export type Parts = { [T in Task['type']]: (task: Extract<Task, { type: T }>, stage: Stage) => Part }

const lookIntoFrames = () => void send({ type: 'frames-look' })
const busyWords = () => say`A fill is under way on this page. Wait until it has ended, or stop it there.`

const narrow = () => innerWidth <= sheetBelow

/** Where the person moved the dock to; it opens there again. */
let side: Side = 'right'
let views = 0

function open(css: string, parts: Parts, closed: AbortController) {
  const { signal } = closed
  const before = document.activeElement
  // Heard before the host is taken away, and the focus with it.
  signal.addEventListener('abort', () => {
    if (document.activeElement === at.host && before instanceof HTMLElement) before.focus({ preventScroll: true })
  })
  // A page of the extension takes frames of its own origin only, which need not be the one that pages are given.
  const address = location.protocol.endsWith('-extension:') ? '/dock.html' : browser.runtime.getURL('/dock.html')
  const at = place(css, address, signal)
  const top = keepOnTop(at, signal)
  let busy = false
  let theme: Theme = 'system'
  let part: Part | undefined
  let life = new AbortController()
  let placed = false
  let apart = false
  let round = new AbortController()

  let sheet = narrow()
  const room = () => tell({ type: 'room', sheet: (sheet = narrow()) })
  addEventListener('resize', () => narrow() !== sheet && room(), { signal })

  const focus = () => at.frame.focus({ preventScroll: true })
  const hear = (message: FromDock) => {
    if (message.type === 'place') {
      side = message.side
      if (apart) return
      at.resize(message)
      if (!placed) focus()
      placed = true
    } else if (message.type === 'close') closed.abort()
    else if (message.type === 'raise') top.raise()
    else if (message.type === 'ask-frame') void askFrame(message.origin)
    else part?.hear(message)
  }
  const askFrame = async (origin: string) => {
    if (!closedOrigins().includes(origin)) return
    const sent = await send({ type: 'ask-frame', origin })
    tell({ type: 'trouble', words: sent.ok ? '' : sent.message })
  }
  const begin = () => tell({ type: 'open', view: ++views, theme, side })
  const tell = joinDock(
    {
      frame: at.frame,
      hear,
      onJoin: (now) => {
        apart = now
        begin()
        room()
        part?.tell()
      },
      // Without a dock nothing can be said here; the helper goes, so that the next press opens it anew.
      onTrouble: () => closed.abort(),
    },
    signal,
  )

  const show = (task: Task) => {
    life.abort()
    life = new AbortController()
    ;({ theme = theme } = task)
    begin()
    const here: Stage = {
      ...top,
      // No page lies over a window of the extension.
      covered: (roots) => !apart && top.covered(roots),
      host: at.host,
      signal: AbortSignal.any([life.signal, signal]),
      say: tell,
      mark: (marks) => {
        round.abort()
        round = new AbortController()
        drawMarks(at.layer, marks, round.signal)
      },
      view: () => ++views,
      focus,
      setBusy: (now) => {
        busy = now
      },
      close: () => closed.abort(),
      show,
    }
    // Each part takes the task of its own kind.
    part = task.type === 'map' ? parts.map(task, here) : parts.plan(task, here)
    part.tell()
  }
  signal.addEventListener('abort', () => {
    life.abort()
    round.abort()
  })
  whenGone(at.host, () => closed.abort(), signal)
  return { show, isBusy: () => busy }
}

/** The helper's place on a page: takes one task after another until `life` ends, and opens itself anew when closed. */
export function stage(css: string, life: AbortSignal, parts: Parts): (task: Task) => Shown {
  let view: (ReturnType<typeof open> & { closed: AbortSignal }) | undefined
  return (task) => {
    if (!view || view.closed.aborted) {
      const closed = new AbortController()
      life.addEventListener('abort', () => closed.abort(), { signal: closed.signal })
      // Frames are looked into only while the helper is open, those that load later too.
      document.addEventListener(
        'load',
        (event) => (event.target as Element).localName === 'iframe' && lookIntoFrames(),
        { capture: true, signal: closed.signal },
      )
      closed.signal.addEventListener('abort', () => {
        forgetFrames()
        void send({ type: 'frames-end' })
      })
      view = { ...open(css, parts, closed), closed: closed.signal }
      if (document.querySelector('iframe')) lookIntoFrames()
    }
    if (view.isBusy()) return { shown: false, message: busyWords() }
    view.show(task)
    return { shown: true }
  }
}
