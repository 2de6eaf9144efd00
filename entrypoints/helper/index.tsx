import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
<<<<<<< HEAD
import { hearFrame } from '../../lib/view/helper/hear-frame.ts'
import { hear, once } from '../../lib/view/helper/once.ts'
import { PlanScreen } from '../../lib/view/helper/plan-screen.tsx'
import { handOver, stage } from '../../lib/view/helper/stage.tsx'
=======
import { browser } from '../../lib/browser.ts'
import { takeFrame } from '../../lib/form/far.ts'
import { isApart, serve, type Agent } from '../../lib/view/helper/agent.ts'
import { send } from '../../lib/view/helper/send.ts'
import { stage } from '../../lib/view/helper/stage.tsx'
import type { ToHelper } from '../../lib/messages.ts'
import { toHelperShape } from '../../lib/message-shapes.ts'
import { fits } from '../../lib/shape.ts'
>>>>>>> 760cd38 (wip)
import css from './style.css?inline'

// Not a content script of the framework: that one announces itself to the page at every injection.
export default defineUnlistedScript({
  main() {
<<<<<<< HEAD
    once('helper', ({ signal }) => {
      const show = stage<'plan'>(css, signal, ({ material, map }, place) => (
        <PlanScreen material={material} map={map} onMap={() => handOver({ type: 'map', material, map }, place)} />
      ))
      hear(['plan', 'frame'], (message) => (message.type === 'plan' ? show(message) : hearFrame(message)), signal)
      return undefined
=======
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
    const listen = (raw: unknown, sender: Runtime.MessageSender, respond: (answer: unknown) => void) => {
      const heard = sender.id === browser.runtime.id && !sender.tab && fits(raw, toHelperShape)
      void (async () => respond(heard ? await answer(raw as ToHelper) : undefined))()
      return true as const
    }
    browser.runtime.onMessage.addListener(listen)
    signal.addEventListener('abort', () => {
      if (extensionLives()) browser.runtime.onMessage.removeListener(listen)
>>>>>>> 760cd38 (wip)
    })
  },
})
