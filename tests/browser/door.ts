/** How a part of the screen is reached: what a Surface asks of a browser. */
import type { CDPSession, Frame, KeyInput, Page } from 'puppeteer-core'

/** An element as the browser names it. */
export type Node = number

export interface Door {
  /** Where the part begins, or nothing while it is not on the screen. Looked up again each time, for pages redraw. */
  root: () => Promise<Node | undefined>
  /** Every element of a role, as the browser tells it to assistive technology. */
  find: (root: Node, role: string) => Promise<{ node: Node; name: string }[]>
  /** Calls a function, given as its text, on a node; `this` is the node. */
  call: <T>(node: Node, declaration: string, args?: unknown[]) => Promise<T>
  /** The middle of an element in the part's own window. */
  middle: (node: Node) => Promise<{ x: number; y: number } | undefined>
  click: (x: number, y: number) => Promise<void>
  type: (text: string) => Promise<void>
  press: (key: KeyInput) => Promise<void>
  close: () => Promise<void>
}

/** Whether an address is that of the dock's page. */
export const isDock = (url: string): boolean => url.endsWith('/dock.html')

/** The frame of the dock, which has a process of its own; looked up again each time, for it may be loaded anew. */
const frameOfDock = (page: Page): Frame | undefined =>
  page.frames().find((frame) => frame.parentFrame() === page.mainFrame() && isDock(frame.url()))

/**
 * The way to the dock in a page.
 * @throws when it is not there
 */
export function dockOf(page: Page): CDPSession {
  const session = (frameOfDock(page) as { client?: CDPSession } | undefined)?.client
  if (session === undefined) throw new Error('The dock is not in the page.')
  return session
}

/** Looks up where a part begins: the document, or a closed shadow root. */
type Start = (session: CDPSession) => Promise<number | undefined>

export class ChromiumDoor implements Door {
  readonly page: Page
  readonly #own: CDPSession
  readonly #dock: boolean
  #turn = Promise.resolve()

  /** `dock`: the part is the frame of the extension that stands in the page, not the page itself. */
  constructor(page: Page, session: CDPSession, dock = false) {
    this.page = page
    this.#own = session
    this.#dock = dock
  }

  get #session(): CDPSession {
    return this.#dock ? dockOf(this.page) : this.#own
  }

  /** A page of the extension shares its process with the dock, and the browser counts from the page's corner there. */
  get #shared(): boolean {
    return this.page.url().startsWith('chrome-extension:')
  }

  async root(): Promise<Node | undefined> {
    if (!this.#dock) return bodyOf(this.#own)
    const frame = frameOfDock(this.page)
    if (!frame) return undefined
    // The frame may go, or be loaded anew, while it is asked.
    const body = this.#shared ? bodyWithin(this.#session, frameId(frame)) : bodyOf(this.#session)
    return body.catch(() => undefined)
  }

  /** Where the frame of the dock begins in the page. */
  async #corner(): Promise<{ x: number; y: number }> {
    const frame = this.#dock ? frameOfDock(this.page) : undefined
    if (!frame) return { x: 0, y: 0 }
    const { backendNodeId } = await this.#own.send('DOM.getFrameOwner', { frameId: frameId(frame) })
    const { quads } = await this.#own.send('DOM.getContentQuads', { backendNodeId })
    return { x: quads[0]?.[0] ?? 0, y: quads[0]?.[1] ?? 0 }
  }

  async find(backendNodeId: Node, role: string): Promise<{ node: Node; name: string }[]> {
    const { nodes } = await this.#session.send('Accessibility.queryAXTree', { backendNodeId, role })
    return nodes.flatMap((node) =>
      node.ignored || node.backendDOMNodeId === undefined
        ? []
        : [{ node: node.backendDOMNodeId, name: String(node.name?.value ?? '') }],
    )
  }

  async call<T>(backendNodeId: Node, declaration: string, args: unknown[] = []): Promise<T> {
    const { object } = await this.#session.send('DOM.resolveNode', {
      backendNodeId,
    })
    const objectId = object.objectId!
    const answer = await this.#session.send('Runtime.callFunctionOn', {
      objectId,
      functionDeclaration: declaration,
      arguments: args.map((value) => ({ value })),
      returnByValue: true,
      awaitPromise: true,
    })
    // What is not let go is kept alive by the browser for the tests, with all that was around it.
    await this.#session.send('Runtime.releaseObject', { objectId }).catch(() => {})
    if (answer.exceptionDetails !== undefined)
      throw new Error(answer.exceptionDetails.exception?.description ?? answer.exceptionDetails.text)
    return answer.result.value as T
  }

  async middle(backendNodeId: Node): Promise<{ x: number; y: number } | undefined> {
    const { quads } = await this.#session.send('DOM.getContentQuads', { backendNodeId })
    const quad = quads[0]
    if (quad === undefined) return undefined
    const at = (axis: 0 | 1): number => [0, 2, 4, 6].reduce((sum, corner) => sum + (quad[corner + axis] ?? 0), 0) / 4
    // Asked in one process, the browser counts from the corner of the page around the frame.
    const corner = this.#dock && this.#shared ? await this.#corner() : { x: 0, y: 0 }
    return { x: at(0) - corner.x, y: at(1) - corner.y }
  }

  /** There is one mouse: of two clicks asked for at once the second waits for the first. */
  click(x: number, y: number): Promise<void> {
    const turn = this.#turn.then(() => this.#clickNow(x, y))
    this.#turn = turn.catch(() => {})
    return turn
  }

  async #clickNow(x: number, y: number): Promise<void> {
    if (this.#dock) await this.#placed()
    const corner = await this.#corner()
    const { mouse } = this.page
    // One after the other, as a hand does: the browser sends each to the frame that lies there by then.
    await mouse.move(corner.x + x, corner.y + y)
    await mouse.down()
    // A press that takes the dock away, its process with it, may never be answered.
    await (this.#dock ? this.#unlessItLeaves(mouse.up()) : mouse.up())
  }

  /** Waits for an answer for as long as the frame of the dock stands in the page. */
  async #unlessItLeaves(answer: Promise<void>): Promise<void> {
    const frame = frameOfDock(this.page)
    const { promise, resolve } = Promise.withResolvers<void>()
    const end = (gone: Frame) => gone === frame && resolve()
    this.page.on('framedetached', end)
    await Promise.race([answer, promise]).finally(() => this.page.off('framedetached', end))
  }

  /** Waits until the page around the dock has given its frame the size that the dock asked for: nobody presses it before. */
  async #placed(): Promise<void> {
    const frame = frameOfDock(this.page)
    if (!frame) return
    const { backendNodeId } = await this.#own.send('DOM.getFrameOwner', { frameId: frameId(frame) })
    const { object } = await this.#own.send('DOM.resolveNode', { backendNodeId })
    const { objectId } = object
    if (objectId === undefined) return
    await this.#own.send('Runtime.callFunctionOn', {
      objectId,
      functionDeclaration: `async function () {
        for (let turn = 0; turn < 100 && this.style.visibility !== 'visible'; turn++)
          await new Promise((done) => setTimeout(done, 50))
      }`,
      awaitPromise: true,
    })
    await this.#own.send('Runtime.releaseObject', { objectId }).catch(() => {})
  }

  type(text: string): Promise<void> {
    return this.page.keyboard.type(text)
  }

  press(key: KeyInput): Promise<void> {
    return this.page.keyboard.press(key)
  }

  close(): Promise<void> {
    return this.page.close()
  }
}

export const bodyOf: Start = async (session) => {
  const { root } = await session.send('DOM.getDocument', { depth: 2 })
  const html = root.children?.find((child) => child.localName === 'html')
  return html?.children?.find((child) => child.localName === 'body')?.backendNodeId
}

/** The protocol's own name of a frame, which the driver keeps to itself. */
const frameId = (frame: Frame): string => (frame as unknown as Record<'_id', string>)['_id']

/** The body of a frame that runs in the process of the page around it. */
async function bodyWithin(session: CDPSession, frame: string): Promise<number | undefined> {
  const { backendNodeId } = await session.send('DOM.getFrameOwner', { frameId: frame })
  const { node } = await session.send('DOM.describeNode', { backendNodeId, depth: 3, pierce: true })
  const html = node.contentDocument?.children?.find((child) => child.localName === 'html')
  return html?.children?.find((child) => child.localName === 'body')?.backendNodeId
}
