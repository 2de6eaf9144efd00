import { render } from 'preact'
import browser from 'webextension-polyfill'
import { createShadowRootUi } from 'wxt/utils/content-script-ui/shadow-root'
import { defineContentScript } from 'wxt/utils/define-content-script'
import { keepOnTop } from '../../lib/view/helper/keep-on-top.ts'
import { App } from '../../lib/view/helper/app.tsx'
import { toHelperSchema, type ToHelper } from '../../lib/messages.ts'
import css from './style.css?inline'

declare global {
  /** Set in the extension's isolated world; the page cannot see it. */
  var gapsumHelper: { alive: () => boolean; end: () => void } | undefined
}

const extensionLives = () => Boolean(browser.runtime?.id)

/** Keys, presses and edits in the dock are not the page's business. */
const ownEvents = ['keydown', 'keyup', 'keypress', 'beforeinput', 'input', 'change', 'paste', 'copy', 'cut', 'click']
const ownPresses = ['dblclick', 'pointerdown', 'pointerup', 'mousedown', 'mouseup', 'focusin', 'focusout', 'submit']

export default defineContentScript({
  registration: 'runtime',
  cssInjectionMode: 'manual',
  noScriptStartedPostMessage: true,
  main(ctx) {
    // A later action injects this file again: the living helper goes on, with what the person has begun.
    if (globalThis.gapsumHelper?.alive()) return
    globalThis.gapsumHelper?.end()

    const life = new AbortController()
    const { signal } = life
    globalThis.gapsumHelper = { alive: () => !signal.aborted && extensionLives(), end: () => life.abort() }
    ctx.onInvalidated(() => {
      if (!extensionLives()) life.abort()
    })

    let view: { show: (message: ToHelper) => string | undefined } | undefined

    const open = async () => {
      const shown = new AbortController()
      const close = () => shown.abort()
      signal.addEventListener('abort', close, { signal: shown.signal })
      // wxt would take the interface away at every new injection; ours lives until it is closed or the extension ends.
      const lasting = Object.assign(Object.create(ctx) as typeof ctx, {
        onInvalidated: (end: () => void) => {
          shown.signal.addEventListener('abort', end)
          return () => shown.signal.removeEventListener('abort', end)
        },
      })
      let busy = false
      let round = 0
      const ui = await createShadowRootUi(lasting, {
        name: 'gapsum-helper',
        position: 'inline',
        mode: 'closed',
        anchor: () => document.documentElement,
        // The page's font size must not scale the dock: `rem` becomes the browser's own default size.
        css: css.replaceAll(/(-?[\d.]+)rem\b/g, 'calc($1 * var(--rem))'),
        isolateEvents: [...ownEvents, ...ownPresses],
        onMount: (container, root, host) => {
          host.style.setProperty('--rem', getComputedStyle(host).fontSize)
          keepOnTop(host, shown.signal)
          return { container, root, host }
        },
        onRemove: (mounted) => {
          if (mounted) render(null, mounted.container)
          view = undefined
        },
      })
      ui.mount()
      const { mounted } = ui
      if (!mounted) return undefined
      return {
        show: (message: ToHelper) => {
          if (busy) return 'A fill is under way on this page. Wait until it has ended, or stop it there.'
          round += 1
          render(
            <App
              key={round}
              message={message}
              host={mounted.host}
              root={mounted.root}
              signal={shown.signal}
              close={close}
              setBusy={(now) => {
                busy = now
              }}
            />,
            mounted.container,
          )
          return undefined
        },
      }
    }

    const listen = async (raw: unknown) => {
      const parsed = toHelperSchema.safeParse(raw)
      if (!parsed.success)
        return { shown: false, message: 'The page helper did not understand the message. Reload the page.' }
      view ??= await open()
      const refusal = view ? view.show(parsed.data) : 'The page helper could not be shown on this page.'
      return refusal ? { shown: false, message: refusal } : { shown: true }
    }
    const onMessage = (raw: unknown, sender: browser.Runtime.MessageSender) =>
      sender.id === browser.runtime.id && !sender.tab ? listen(raw) : undefined
    browser.runtime.onMessage.addListener(onMessage)
    signal.addEventListener('abort', () => {
      if (extensionLives()) browser.runtime.onMessage.removeListener(onMessage)
    })
  },
})
