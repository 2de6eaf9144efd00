import { Fragment, render, type ComponentChildren } from 'preact'
import { forgetFrames } from '../../form/far.ts'
import { kept } from '../../form/kept.ts'
import type { ToHelper } from '../../messages.ts'
import { say } from '../../words/say.ts'
import { App } from './app.tsx'
import { keepOnTop } from './keep-on-top.ts'
import { send } from './send.ts'
import { shadowHost } from './shadow-host.ts'

/** What the person opened the helper for. */
export type Task<T extends 'map' | 'plan' = 'map' | 'plan'> = Extract<ToHelper, { type: T }>

/** Whether the task is shown now, or why not. */
export type Shown = { shown: true } | { shown: false; message: string }

/** What a screen may do with its place besides drawing in it. */
export interface Place {
  /** Says in the dock why something did not come. */
  say: (trouble: string) => void
}

type Draw<T extends 'map' | 'plan'> = (task: Task<T>, place: Place) => ComponentChildren

declare global {
  /** Closes the part of the helper that is open, so that another takes its place, or says why it stays. */
  var gapsumLeave: (() => string | undefined) | undefined
}

const lookIntoFrames = () => void send({ type: 'frames-look' })
const busyWords = () => say`A fill is under way on this page. Wait until it has ended, or stop it there.`

/** Draws the interface; what it returns shows a task in it. */
function open<T extends 'map' | 'plan'>(css: string, closed: AbortController, draw: Draw<T>) {
  const { signal } = closed
  const before = document.activeElement
  // Heard before the host is taken away, and the focus with it.
  signal.addEventListener('abort', () => {
    if (document.activeElement === host && before instanceof HTMLElement) before.focus({ preventScroll: true })
  })
  const { host, root, container } = shadowHost(css, signal)
  keepOnTop(host, signal)
  signal.addEventListener('abort', () => render(null, container))
  const close = () => closed.abort()
  const state = { busy: false, round: 0 }
  const setBusy = (now: boolean) => {
    state.busy = now
  }

  const show = (task: Task<T>) => {
    const round = ++state.round
    const { theme } = task as Task
    if (theme && theme !== 'system') container.dataset.theme = theme
    else delete container.dataset.theme
    const put = (trouble: string) => {
      if (signal.aborted || round !== state.round) return
      render(
        <App {...{ host, root, signal, close, setBusy, round, trouble }}>
          <Fragment key={round}>{screen}</Fragment>
        </App>,
        container,
      )
    }
    const screen = draw(task, { say: put })
    put('')
  }
  return { show, isBusy: () => state.busy }
}

/** The helper's place on a page: takes one task after another until `life` ends, and opens itself anew when closed. */
export function stage<T extends 'map' | 'plan'>(
  css: string,
  life: AbortSignal,
  draw: Draw<T>,
): (task: Task<T>) => Shown {
  let view: (ReturnType<typeof open<T>> & { closed: AbortSignal }) | undefined
  return (task) => {
    if (!view || view.closed.aborted) {
      const refusal = kept('gapsumLeave')?.()
      if (refusal !== undefined) return { shown: false, message: refusal }
      const closed = new AbortController()
      const opened = open(css, closed, draw)
      let replaced = false
      const leave = () => {
        if (opened.isBusy()) return busyWords()
        replaced = true
        closed.abort()
        return undefined
      }
      globalThis.gapsumLeave = leave
      life.addEventListener('abort', () => closed.abort(), { signal: closed.signal })
      // Frames are looked into only while the helper is open, those that load later too.
      document.addEventListener(
        'load',
        (event) => (event.target as Element).localName === 'iframe' && lookIntoFrames(),
        { capture: true, signal: closed.signal },
      )
      closed.signal.addEventListener('abort', () => {
        forgetFrames()
        if (kept('gapsumLeave') === leave) globalThis.gapsumLeave = undefined
        // Whoever takes over goes on hearing them.
        if (!replaced) void send({ type: 'frames-end' })
      })
      if (document.querySelector('iframe')) lookIntoFrames()
      view = { ...opened, closed: closed.signal }
    }
    if (view.isBusy()) return { shown: false, message: busyWords() }
    view.show(task)
    return { shown: true }
  }
}

/** Has the background put the other part of the helper here, which then takes the place of this one. */
export async function handOver(task: Task, place: Place): Promise<void> {
  const sent = await send({ type: 'hand-over', task })
  if (!sent.ok) place.say(sent.message)
}
