/** Notices of change between the open views of the extension. */

export type Notice = {
  what: 'jobs' | 'devices' | 'maps' | 'fills' | 'entries' | 'settings' | 'limits' | 'reviews' | 'copies'
  /** Id or entry number of what changed; absent when many did. */
  id?: string | number
}

/** `own`: the change was made in this page or worker. */
type Listener = (notice: Notice, own: boolean) => void

const listeners = new Set<Listener>()
let channel: BroadcastChannel | undefined

function openChannel(): BroadcastChannel {
  if (!channel) {
    channel = new BroadcastChannel('gapsum-book')
    channel.addEventListener('message', (event: MessageEvent<Notice>) => {
      for (const listener of listeners) listener(event.data, false)
    })
  }
  return channel
}

export function announce(notice: Notice): void {
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a BroadcastChannel has no target origin
  openChannel().postMessage(notice)
  for (const listener of listeners) listener(notice, true)
}

/** Calls `listener` at each change until the returned function is called or `signal` aborts. */
export function subscribe(listener: Listener, signal?: AbortSignal): () => void {
  openChannel()
  listeners.add(listener)
  const stop = () => void listeners.delete(listener)
  signal?.addEventListener('abort', stop, { once: true })
  return stop
}

/** Closes the channel, so that a worker or a test can end. */
export function closeNotices(): void {
  channel?.close()
  channel = undefined
}
