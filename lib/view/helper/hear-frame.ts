import { takeFrame } from '../../form/page/far.ts'
import type { ToHelper } from '../../messages/messages.ts'
import { send } from './send.ts'

/** Takes what a frame of another origin shows now; its controls are written by asking its own script. */
export function hearFrame({ frame, address, images }: Extract<ToHelper, { type: 'frame' }>): void {
  takeFrame(frame, address, images, async (key, text) => {
    const sent = await send({ type: 'frame-write', frame, key, text })
    return sent.ok ? (sent.written ?? {}) : { reason: sent.message }
  })
}
