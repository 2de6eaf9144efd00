/** A fill whose page goes away, or is reloaded, becomes an entry at once: its helper holds a line open while it fills. */
import type { Runtime } from 'webextension-polyfill'
import { closeUnended } from '../book/fills.ts'
import { fillPort } from '../messages/fill-port.ts'

/** Time for what the helper sent last to arrive, in ms. */
const grace = 500

/** Takes the line of a fill; others are left alone. `self`: the id of this extension. */
export function hearFillPort({ name, sender, onDisconnect }: Runtime.Port, self: string): void {
  if (sender?.id !== self || !sender.tab || !name.startsWith(fillPort)) return
  const id = name.slice(fillPort.length)
  onDisconnect.addListener(() => {
    setTimeout(() => {
      closeUnended((open) => open.id !== id).catch((error: unknown) => {
        console.error('A fill could not be ended; the book tries again later.', error)
      })
    }, grace)
  })
}
