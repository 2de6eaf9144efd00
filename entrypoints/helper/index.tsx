import { render } from 'preact'
import type { Runtime } from 'webextension-polyfill'
import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
import { browser } from '../../lib/browser.ts'
import { App, type Task } from '../../lib/view/helper/app.tsx'
import { forgetFrames, takeFrame } from '../../lib/form/far.ts'
import { isApart, serve, type Agent } from '../../lib/view/helper/agent.ts'
import { keepOnTop } from '../../lib/view/helper/keep-on-top.ts'
import { send } from '../../lib/view/helper/send.ts'
import { shadowHost } from '../../lib/view/helper/shadow-host.ts'
import type { ToHelper } from '../../lib/messages.ts'
import css from './style.css?inline'

declare global {
  /** Set in the extension's isolated world; the page cannot see it. */
  var gapsumHelper: { alive: () => boolean; end: () => void; again?: () => void } | undefined
}

const lookIntoFrames = () => void send({ type: 'frames-look' })

const extensionLives = () => Boolean(browser.runtime?.id)

/** Draws the interface; what it returns shows a message in it, or says why not. */
function open(closed: AbortController) {
  const { signal } = closed
  const { host, root, container } = shadowHost(css, signal)
  keepOnTop(host, signal)
  signal.addEventListener('abort', () => render(null, container))
  let busy = false
  let round = 0

  return (message: Task): string | undefined => {
    if (busy) return 'A fill is under way on this page. Wait until it has ended, or stop it there.'
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

// Not a content script of the framework: that one announces itself to the page at every injection.
export default defineUnlistedScript({
  main() {
    // A later action injects this file again: the living helper goes on, with what the person has begun.
    if (globalThis.gapsumHelper?.alive()) return globalThis.gapsumHelper.again?.()
    // The page around a frame of its own origin reaches into it by itself.
    const apart = isApart()
    if (window !== window.top && !apart) return undefined
    globalThis.gapsumHelper?.end()
    const life = new AbortController()
    const { signal } = life
    globalThis.gapsumHelper = { alive: () => !signal.aborted && extensionLives(), end: () => life.abort() }
    const agent: Agent | undefined = apart ? serve(signal) : undefined
    if (agent) globalThis.gapsumHelper.again = agent.tell
    let view: { show: ReturnType<typeof open>; closed: AbortSignal } | undefined
    const answer = (message: ToHelper): unknown => {
      switch (message.type) {
        case 'end':
          if (agent) life.abort()
          return undefined
        case 'write':
          return agent?.write(message.key, message.text)
        case 'frame': {
          const { frame, address, images } = message
          takeFrame(frame, address, images, async (key, text) => {
            const sent = await send({ type: 'frame-write', frame, key, text })
            return sent.ok ? (sent.written ?? {}) : { reason: sent.message }
          })
          return undefined
        }
        default:
          return show(message)
      }
    }
    const show = (message: Task) => {
      if (!view || view.closed.aborted) {
        const closed = new AbortController()
        signal.addEventListener('abort', () => closed.abort(), { signal: closed.signal })
        // Frames are looked into only while the helper is open, those that load later too.
        document.addEventListener(
          'load',
          (event) => (event.target as Element).localName === 'iframe' && lookIntoFrames(),
          {
            capture: true,
            signal: closed.signal,
          },
        )
        closed.signal.addEventListener('abort', () => {
          forgetFrames()
          void send({ type: 'frames-end' })
        })
        if (document.querySelector('iframe')) lookIntoFrames()
        view = { show: open(closed), closed: closed.signal }
      }
      const refusal = view.show(message)
      return refusal === undefined ? { shown: true } : { shown: false, message: refusal }
    }

    // Whoever sends to the helper has checked the message against its schema: the browser vouches for the sender, and
    // the checks would weigh a quarter of what is put into the page.
    const listen = (raw: unknown, sender: Runtime.MessageSender, respond: (answer: unknown) => void) => {
      void (async () =>
        respond(sender.id === browser.runtime.id && !sender.tab ? await answer(raw as ToHelper) : undefined))()
      return true as const
    }
    browser.runtime.onMessage.addListener(listen)
    signal.addEventListener('abort', () => {
      if (extensionLives()) browser.runtime.onMessage.removeListener(listen)
    })
  },
})
