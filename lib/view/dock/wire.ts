/** The dock's end of the way to the helper's script in the page around it. */
import { browser } from '../../browser.ts'
import type { FromDock, ToDock } from '../../messages/dock-messages.ts'
import { toDock } from '../../messages/dock-shapes.ts'
import { fits } from '../../messages/shape.ts'
import { send } from '../helper/send.ts'

type Tell = (message: FromDock) => void

/** What comes through the channel, if it is a message that the dock takes. */
function read(data: unknown): ToDock | undefined {
  try {
    const message = JSON.parse(String(data)) as ToDock
    return Object.hasOwn(toDock, message.type) && fits(message, toDock[message.type]) ? message : undefined
  } catch {
    return undefined
  }
}

/** Connects a dock in a window of its own, by the token that its address holds, with the helper of a tab. */
function connect(tab: number, joined: (tell: Tell) => (message: ToDock) => void): void {
  const name = location.hash.slice(1)
  // Whoever loads this window anew cannot connect again: a helper takes a token once.
  history.replaceState(null, '', location.pathname)
  let tries = 0
  const begin = () => {
    const port = browser.tabs.connect(tab, { name, frameId: 0 })
    let heard = false
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a port has no target origin
    const take = joined((message) => port.postMessage(JSON.stringify(message)))
    port.onMessage.addListener((data: unknown) => {
      heard = true
      const message = read(data)
      if (message) take(message)
    })
    port.onDisconnect.addListener(() => {
      // The helper may begin to listen a moment after this window has opened; it has closed when it goes later.
      if (heard || ++tries > 50) close()
      else setTimeout(begin, 100)
    })
  }
  begin()
}

/**
 * Waits for the channel of the helper of this tab. A page may send messages to any frame: one counts only when it comes
 * with a token that the background gave to the helper of this tab, which no page comes to see.
 * @param joined is told how to answer, and gives what takes the messages
 */
export function awaitHelper(joined: (tell: Tell) => (message: ToDock) => void): void {
  const tab = new URLSearchParams(location.search).get('tab')
  if (tab !== null && parent === window) return connect(Number(tab), joined)
  let port: MessagePort | undefined
  addEventListener('message', async ({ source, data, ports: [own] }) => {
    if (source !== parent || typeof data !== 'string' || data.length > 100 || !own || port) return
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a MessagePort has no target origin
    own.postMessage('"here"')
    const admitted = await send({ type: 'dock-joins', token: data })
    if (!admitted.ok || port) return
    port = own
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a MessagePort has no target origin
    const take = joined((message) => own.postMessage(JSON.stringify(message)))
    own.addEventListener('message', (event) => {
      const message = read(event.data)
      if (message) take(message)
    })
    own.start()
  })
}
