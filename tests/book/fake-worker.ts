/** A worker of the browser that serves in this process, behind a line that copies what it carries. */
import { serve, type Line, type Told } from '../../lib/book/reader.ts'

export const workers = { begun: 0, dieAfter: Infinity }

class FakeWorker extends EventTarget {
  readonly #page: MessagePort

  constructor() {
    super()
    workers.begun++
    const { port1, port2 } = new MessageChannel()
    this.#page = port1
    let told = 0
    const line: Line = {
      postMessage: (message: Told) => {
        if (told++ < workers.dieAfter) port2.postMessage(message)
        else if (!('ended' in message) && !('trouble' in message)) throw new Error('It ended.')
      },
      addEventListener: (_, listener) => {
        port2.addEventListener('message', listener as (event: Event) => void)
        port2.start()
      },
    }
    port1.addEventListener('message', ({ data }: MessageEvent<Told>) => {
      this.dispatchEvent(new MessageEvent('message', { data }))
      if (--left === 0) this.dispatchEvent(new Event('error'))
    })
    let left = workers.dieAfter
    port1.start()
    serve(line)
  }

  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- as a worker's
  postMessage = (message: unknown) => this.#page.postMessage(message)

  terminate(): void {
    this.#page.close()
  }
}

export function haveWorkers(): void {
  Object.assign(globalThis, { Worker: FakeWorker })
  Object.assign(workers, { begun: 0, dieAfter: Infinity })
}

export function haveNone(): void {
  Reflect.deleteProperty(globalThis, 'Worker')
}
