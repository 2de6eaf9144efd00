import { render } from 'preact'
import type { Runtime } from 'webextension-polyfill'
import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
import { browser } from '../../lib/browser.ts'
import { App } from '../../lib/view/helper/app.tsx'
import { keepOnTop } from '../../lib/view/helper/keep-on-top.ts'
import { shadowHost } from '../../lib/view/helper/shadow-host.ts'
import type { ToHelper } from '../../lib/messages.ts'
import css from './style.css?inline'

declare global {
  /** Set in the extension's isolated world; the page cannot see it. */
  var gapsumHelper: { alive: () => boolean; end: () => void } | undefined
}

const extensionLives = () => Boolean(browser.runtime?.id)

/** Draws the interface; what it returns shows a message in it, or says why not. */
function open(closed: AbortController) {
  const { signal } = closed
  const { host, root, container } = shadowHost(css, signal)
  keepOnTop(host, signal)
  signal.addEventListener('abort', () => render(null, container))
  let busy = false
  let round = 0

  return (message: ToHelper): string | undefined => {
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
    if (globalThis.gapsumHelper?.alive()) return
    globalThis.gapsumHelper?.end()
    const life = new AbortController()
    const { signal } = life
    globalThis.gapsumHelper = { alive: () => !signal.aborted && extensionLives(), end: () => life.abort() }
    let view: { show: ReturnType<typeof open>; closed: AbortSignal } | undefined
    const answer = (message: ToHelper) => {
      if (!view || view.closed.aborted) {
        const closed = new AbortController()
        signal.addEventListener('abort', () => closed.abort(), { signal: closed.signal })
        view = { show: open(closed), closed: closed.signal }
      }
      const refusal = view.show(message)
      return refusal === undefined ? { shown: true } : { shown: false, message: refusal }
    }

    // Whoever sends to the helper has checked the message against its schema: the browser vouches for the sender, and
    // the checks would weigh a quarter of what is put into the page.
    const listen = (raw: unknown, sender: Runtime.MessageSender, respond: (answer: unknown) => void) => {
      respond(sender.id === browser.runtime.id && !sender.tab ? answer(raw as ToHelper) : undefined)
      return true as const
    }
    browser.runtime.onMessage.addListener(listen)
    signal.addEventListener('abort', () => {
      if (extensionLives()) browser.runtime.onMessage.removeListener(listen)
    })
  },
})
