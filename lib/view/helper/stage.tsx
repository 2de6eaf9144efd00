import { render } from 'preact'
import { forgetFrames } from '../../form/far.ts'
import { say } from '../../words/say.ts'
import { App, type Task } from './app.tsx'
import { keepOnTop } from './keep-on-top.ts'
import { send } from './send.ts'
import { shadowHost } from './shadow-host.ts'

/** Whether the task is shown now, or why not. */
export type Shown = { shown: true } | { shown: false; message: string }

const lookIntoFrames = () => void send({ type: 'frames-look' })

/** Draws the interface; what it returns shows a task in it, or says why not. */
function open(css: string, closed: AbortController) {
  const { signal } = closed
  const { host, root, container } = shadowHost(css, signal)
  keepOnTop(host, signal)
  signal.addEventListener('abort', () => render(null, container))
  let busy = false
  let round = 0

  return (message: Task): string | undefined => {
    if (busy) return say`A fill is under way on this page. Wait until it has ended, or stop it there.`
    round += 1
    render(
      <App
        key={round}
        message={message}
        host={host}
        root={root}
        signal={signal}
        close={() => closed.abort()}
        setBusy={(now) => {
          busy = now
        }}
      />,
      container,
    )
    return undefined
  }
}

/** The helper's place on a page: takes one task after another until `life` ends, and opens itself anew when closed. */
export function stage(css: string, life: AbortSignal): (message: Task) => Shown {
  let view: { show: ReturnType<typeof open>; closed: AbortSignal } | undefined
  return (message) => {
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
      if (document.querySelector('iframe')) lookIntoFrames()
      view = { show: open(css, closed), closed: closed.signal }
    }
    const refusal = view.show(message)
    return refusal === undefined ? { shown: true } : { shown: false, message: refusal }
  }
}
