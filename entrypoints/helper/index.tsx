import type { Runtime } from 'webextension-polyfill'
import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
import { browser } from '../../lib/browser.ts'
import { takeFrame } from '../../lib/form/far.ts'
import { isApart, serve, type Agent } from '../../lib/view/helper/agent.ts'
import { send } from '../../lib/view/helper/send.ts'
import { stage } from '../../lib/view/helper/stage.tsx'
import type { ToHelper } from '../../lib/messages.ts'
import css from './style.css?inline'

declare global {
  /** Set in the extension's isolated world; the page cannot see it. */
  var gapsumHelper: { alive: () => boolean; end: () => void; again?: () => void } | undefined
}

const extensionLives = () => Boolean(browser.runtime?.id)

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
    const show = stage(css, signal)
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
