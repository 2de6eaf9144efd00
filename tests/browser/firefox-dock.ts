/**
 * The dock in Firefox. It stands in a frame of the extension's own, which runs in another process than the page around
 * it: the driver's protocol reaches it as the context that it is, and sends mouse and keys there.
 */
import type { KeyInput } from 'puppeteer-core'
import { isDock, type Door, type Node } from './door.ts'

type Send = (method: string, params: object) => Promise<{ result: unknown }>

interface Context {
  context: string
  url: string
  children?: Context[] | null
}

interface Answer {
  type: 'success' | 'exception'
  result?: { value?: unknown }
  exceptionDetails?: { text: string }
}

/** Keys without a character, as WebDriver writes them (https://www.w3.org/TR/webdriver2/#keyboard-actions). */
const named: Readonly<Record<string, string>> = {
  Backspace: '\uE003',
  Tab: '\uE004',
  Enter: '\uE007',
  Shift: '\uE008',
  Escape: '\uE00C',
  End: '\uE010',
  Home: '\uE011',
  ArrowLeft: '\uE012',
  ArrowUp: '\uE013',
  ArrowRight: '\uE014',
  ArrowDown: '\uE015',
  Delete: '\uE017',
}

const besideFrame = (body: string): string => `(async () => {
  const nodes = (globalThis.foundNodes ??= [])
  const keep = (node) => {
    const known = nodes.indexOf(node)
    return known < 0 ? nodes.push(node) - 1 : known
  }
  return JSON.stringify({ value: await (${body})() })
})()`

export class FirefoxDockDoor implements Door {
  readonly #send: Send
  readonly #page: () => string
  readonly #roles: string
  readonly #close: () => Promise<void>

  /** @param roles code that defines `roles`; `close` closes the page around the dock */
  constructor(send: Send, page: () => string, roles: string, close: () => Promise<void>) {
    this.#send = send
    this.#page = page
    this.#roles = roles
    this.#close = close
  }

  async #context(): Promise<string | undefined> {
    const { result } = await this.#send('browsingContext.getTree', {})
    const page = (result as { contexts: Context[] }).contexts.findLast(({ url }) => url === this.#page())
    return page?.children?.find(({ url }) => isDock(url))?.context
  }

  async #run<T>(body: string): Promise<T> {
    const context = await this.#context()
    if (context === undefined) throw new Error('The dock is not in the page.')
    const { result } = await this.#send('script.evaluate', {
      expression: besideFrame(body),
      awaitPromise: true,
      target: { context, sandbox: 'looking' },
    })
    const answer = result as Answer
    if (answer.type === 'exception') throw new Error(answer.exceptionDetails?.text)
    return (JSON.parse(String(answer.result?.value)) as { value: T }).value
  }

  root(): Promise<Node | undefined> {
    // The frame may go, or be loaded anew, while it is asked.
    return this.#run<Node | undefined>('() => document.body ? keep(document.body) : undefined').catch(() => undefined)
  }

  find(root: Node, role: string): Promise<{ node: Node; name: string }[]> {
    return this.#run(`() => {
      ${this.#roles}
      return roles
        .named(nodes[${root}], ${JSON.stringify(role)})
        .map(({ element, name }) => ({ node: keep(element), name }))
    }`)
  }

  call<T>(node: Node, declaration: string, args: unknown[] = []): Promise<T> {
    return this.#run(`() => (${declaration}).apply(nodes[${node}], ${JSON.stringify(args)})`)
  }

  middle(node: Node): Promise<{ x: number; y: number } | undefined> {
    return this.#run(`() => {
      const box = nodes[${node}].getClientRects()[0]
      return box && { x: box.x + box.width / 2, y: box.y + box.height / 2 }
    }`)
  }

  async #act(source: object): Promise<void> {
    const context = await this.#context()
    if (context === undefined) throw new Error('The dock is not in the page.')
    await this.#send('input.performActions', { context, actions: [source] })
  }

  async click(x: number, y: number): Promise<void> {
    await this.#act({
      type: 'pointer',
      id: 'mouse',
      parameters: { pointerType: 'mouse' },
      actions: [
        { type: 'pointerMove', x: Math.round(x), y: Math.round(y) },
        { type: 'pointerDown', button: 0 },
        { type: 'pointerUp', button: 0 },
      ],
    })
  }

  async #keys(keys: readonly string[]): Promise<void> {
    const actions = keys.flatMap((value) => [
      { type: 'keyDown', value },
      { type: 'keyUp', value },
    ])
    await this.#act({ type: 'key', id: 'keyboard', actions })
  }

  type(text: string): Promise<void> {
    return this.#keys([...text])
  }

  press(key: KeyInput): Promise<void> {
    return this.#keys([named[key] ?? key])
  }

  close(): Promise<void> {
    return this.#close()
  }
}
