/** The way between the helper's script in a page and the dock in its frame. */
import type { Runtime } from 'webextension-polyfill'
import { browser } from '../../browser.ts'
import type { FromDock, ToDock } from '../../messages/dock-messages.ts'
import { fromDock } from '../../messages/dock-shapes.ts'
import { fits } from '../../messages/shape.ts'
import { send } from './send.ts'

/** So long a frame that has loaded may take to say that it is there, in ms; then no frame can stand on this page. */
const patience = 6000

/** What a dock answers at once, before it has asked the background about the token. */
const here = '"here"'

interface Joining {
  frame: HTMLIFrameElement
  hear: (message: FromDock) => void
  /** The dock has come, or come anew: its frame was loaded again. `apart`: it stands in a window of its own. */
  onJoin: (apart: boolean) => void
  onTrouble: (words: string) => void
}

/**
 * Hands a dock that has loaded one end of a channel, together with a token that the background gave to the helper of
 * this tab: the dock asks the background about it before it listens. The page sees neither: a message to a frame is
 * told to that frame only, and all later ones go through the channel, as texts. Where the page's rules let no frame of
 * another origin stand, the background opens the dock in a window of its own, which connects with a token as well.
 * @returns says something to the dock; until it has come, nothing is heard
 */
export function joinDock({ frame, hear, onJoin, onTrouble }: Joining, signal: AbortSignal): (message: ToDock) => void {
  let post: ((text: string) => void) | undefined
  let end: (() => void) | undefined
  let apart = false
  let waiting: ReturnType<typeof setTimeout> | undefined
  let first: ReturnType<typeof send> | undefined = send({ type: 'dock-opens' })

  const take = (data: unknown) => {
    let message: unknown
    try {
      message = JSON.parse(String(data))
    } catch {
      return
    }
    const type = (message as { type?: unknown } | null)?.type
    if (signal.aborted || typeof type !== 'string' || !Object.hasOwn(fromDock, type)) return
    if (!fits(message, fromDock[type as FromDock['type']])) return
    hear(message as FromDock)
  }

  const join = async () => {
    // A token is worth something once; a frame that loads again needs the next one.
    const asked = first ?? send({ type: 'dock-opens' })
    first = undefined
    const given = await asked
    if (signal.aborted || apart) return
    if (!given.ok || given.token === undefined) return onTrouble(given.ok ? '' : given.message)
    end?.()
    const { port1, port2 } = new MessageChannel()
    port1.addEventListener('message', ({ data }) => {
      clearTimeout(waiting)
      if (data !== here) take(data)
    })
    port1.start()
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a MessagePort has no target origin
    post = (text) => port1.postMessage(text)
    end = () => port1.close()
    frame.contentWindow?.postMessage(given.token, new URL(browser.runtime.getURL('')).origin, [port2])
    onJoin(false)
    clearTimeout(waiting)
    waiting = setTimeout(() => void standApart(), patience)
  }

  const standApart = async () => {
    apart = true
    end?.()
    const given = await send({ type: 'dock-apart' })
    if (signal.aborted) return
    if (!given.ok || given.token === undefined) return onTrouble(given.ok ? '' : given.message)
    const { token } = given
    const connected = (port: Runtime.Port) => {
      if (port.name !== token || port.sender?.id !== browser.runtime.id || signal.aborted) return
      browser.runtime.onConnect.removeListener(connected)
      port.onMessage.addListener(take)
      post = (text) => port.postMessage(text)
      end = () => port.disconnect()
      onJoin(true)
    }
    browser.runtime.onConnect.addListener(connected)
    signal.addEventListener('abort', () => browser.runtime.onConnect.removeListener(connected))
  }

  frame.addEventListener('load', () => void join(), { signal })
  signal.addEventListener('abort', () => {
    clearTimeout(waiting)
    end?.()
  })
  return (message) => post?.(JSON.stringify(message))
}
