/** A script of the extension in a page or frame: it runs once, however often it is put there. */
import type { Runtime } from 'webextension-polyfill'
import { browser } from '../../browser.ts'
import { kept } from '../../form/kept.ts'
import type { ToHelper } from '../../messages/messages.ts'
import { fits, type Shape } from '../../messages/shape.ts'

interface Living {
  alive: () => boolean
  end: () => void
  again: () => void
}

declare global {
  /** Set in the extension's isolated world; the page cannot see it. */
  var gapsumScripts: Record<string, Living> | undefined
}

const extensionLives = () => Boolean(browser.runtime?.id)

/**
 * Runs a script unless it lives here already: then it goes on, with what the person has begun.
 * @param main what the script does until its life ends; what it gives runs when the script is put there again
 */
export function once(name: string, main: (life: AbortController) => (() => void) | undefined): void {
  const scripts = (globalThis.gapsumScripts = kept('gapsumScripts') ?? {})
  const living = scripts[name]
  if (living?.alive()) return living.again()
  // What an update of the extension left behind answers to nobody.
  for (const script of Object.values(scripts)) if (!script.alive()) script.end()
  const life = new AbortController()
  const again = main(life)
  scripts[name] = {
    alive: () => !life.signal.aborted && extensionLives(),
    end: () => life.abort(),
    again: () => again?.(),
  }
}

/** What is done with the messages of a type, once they have its shape. */
type Hears = { [T in ToHelper['type']]?: [shape: Shape, take: (message: Extract<ToHelper, { type: T }>) => unknown] }

/**
 * Hears messages of some types until the signal aborts; those of other types are left to other scripts. The browser
 * vouches for the sender; what a message holds is checked by its shape, for the schemas would weigh a quarter of what is
 * put into the page.
 */
export function hear(hears: Hears, signal: AbortSignal): void {
  const listen: Runtime.OnMessageListenerCallback = (raw, sender, respond) => {
    const type = (raw as ToHelper | undefined)?.type
    const [shape, take] = (type !== undefined && Object.hasOwn(hears, type) && hears[type]) || []
    const heard = sender.id === browser.runtime.id && !sender.tab && shape && fits(raw, shape)
    // The types know no listener that leaves some messages to others.
    if (!heard) return undefined as never
    void (async () => respond(await take?.(raw as never)))()
    return true
  }
  browser.runtime.onMessage.addListener(listen)
  signal.addEventListener('abort', () => {
    if (extensionLives()) browser.runtime.onMessage.removeListener(listen)
  })
}
