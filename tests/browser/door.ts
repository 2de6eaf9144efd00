/** How a part of the screen is reached: what a Surface asks of a browser. */
import type { CDPSession, KeyInput, Page } from 'puppeteer-core'

/** An element as the browser names it. */
export type Node = number

export interface Door {
  /** Where the part begins, or nothing while it is not on the screen. Looked up again each time, for pages redraw. */
  root: () => Promise<Node | undefined>
  /** Every element of a role, as the browser tells it to assistive technology. */
  find: (root: Node, role: string) => Promise<{ node: Node; name: string }[]>
  /** Calls a function, given as its text, on a node; `this` is the node. */
  call: <T>(node: Node, declaration: string, args?: unknown[]) => Promise<T>
  /** The middle of an element in the window. */
  middle: (node: Node) => Promise<{ x: number; y: number } | undefined>
  click: (x: number, y: number) => Promise<void>
  type: (text: string) => Promise<void>
  press: (key: KeyInput) => Promise<void>
  close: () => Promise<void>
}

/** Looks up where a part begins: the document, or a closed shadow root. */
type Start = (session: CDPSession) => Promise<number | undefined>

export class ChromiumDoor implements Door {
  readonly page: Page
  readonly #session: CDPSession
  readonly #start: Start
  readonly #apart: boolean

  /** `apart`: looks from a world of its own, where what the page's scripts have overridden does not count. */
  constructor(page: Page, session: CDPSession, start: Start, apart = false) {
    this.#apart = apart
    this.page = page
    this.#session = session
    this.#start = start
  }

  root(): Promise<Node | undefined> {
    return this.#start(this.#session)
  }

  async #world(): Promise<number> {
    const { frameTree } = await this.#session.send('Page.getFrameTree')
    const world = { frameId: frameTree.frame.id, worldName: 'looking' }
    return (await this.#session.send('Page.createIsolatedWorld', world)).executionContextId
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
      ...(this.#apart && { executionContextId: await this.#world() }),
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
    return { x: at(0), y: at(1) }
  }

  click(x: number, y: number): Promise<void> {
    return this.page.mouse.click(x, y)
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

/** Elements of a name in any shadow root of the page. */
async function everywhere(session: CDPSession, name: string): Promise<number[]> {
  const query = { query: name, includeUserAgentShadowDOM: true }
  const { searchId, resultCount } = await session.send('DOM.performSearch', query)
  if (resultCount === 0) return []
  const { nodeIds } = await session.send('DOM.getSearchResults', { searchId, fromIndex: 0, toIndex: resultCount })
  await session.send('DOM.discardSearchResults', { searchId })
  return nodeIds
}

/** Asked for by name, for the whole tree of a page may be very large. */
export const closedRootOf: Start = async (session) => {
  const { root } = await session.send('DOM.getDocument', { depth: 0 })
  const selector = 'gapsum-helper'
  const { nodeIds: own } = await session.send('DOM.querySelectorAll', { nodeId: root.nodeId, selector })
  const nodeIds = own.length > 0 ? own : await everywhere(session, selector)
  for (const nodeId of nodeIds) {
    const { node } = await session.send('DOM.describeNode', { nodeId, depth: 1, pierce: true })
    const found = node.shadowRoots?.find(({ shadowRootType }) => shadowRootType === 'closed')
    if (found) return found.backendNodeId
  }
  return undefined
}
