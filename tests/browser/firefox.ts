/**
 * A real Firefox with the built extension in it. The toolbar's button is clicked in the browser's own window, so that
 * the popup is the real one and activeTab is granted as to a person.
 *
 * The driver's protocol knows no popup. So each part but the dock is reached by a script that the browser
 * runs beside a page, which finds by role and name, and sends mouse and keys as the window system does. The browser's own
 * accessibility service would tell roles and names, but begins to read a popup only at some later frame.
 */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { launch as launchBrowser, type Browser, type KeyInput, type Page } from 'puppeteer-core'
import type { Door, Node } from './door.ts'
import { FirefoxDockDoor } from './firefox-dock.ts'
import { findBrowser } from './find-browser.ts'
import { bundle } from './isolated.ts'
import { Surface, until } from './surface.ts'

export const builtForFirefox = fileURLToPath(new URL('../../.output/firefox-mv3', import.meta.url))

export const id = 'gapsum@gapsum.example'
/** Firefox draws one for each profile; here it is given, so that its pages have a known address. */
const origin = 'moz-extension://7e1c3a52-0d4b-4f6a-9b1e-2c8d5a7f9e30'

type Place = { popup: string } | { sidebar: string } | { tab: string }

interface Protocol {
  connection: { send: (method: string, params: object) => Promise<{ result: unknown }> }
}

/** What the browser says of a call in its own window. */
interface Answer {
  type: 'success' | 'exception'
  result?: { value?: unknown }
  exceptionDetails?: { text: string }
}

/** A click of the mouse at a point of a window, as the window system tells of it. */
const mouse = `(window, x, y) => {
  window.synthesizeMouseEvent('mousemove', x, y, { button: 0, buttons: 0, clickCount: 0 })
  window.synthesizeMouseEvent('mousedown', x, y, { button: 0, buttons: 1, clickCount: 1 })
  window.synthesizeMouseEvent('mouseup', x, y, { button: 0, buttons: 0, clickCount: 1 })
}`

/** Runs in the browser's window: hands a script to the page of a place, and waits for what it says. */
const relay = `async (place, script, timeout) => {
  const { popup, sidebar, tab } = JSON.parse(place)
  const inSidebar = () => SidebarController.browser.contentDocument?.querySelectorAll('browser') ?? []
  const browsers = [
    ...(popup ? document.querySelectorAll('.webextension-popup-browser') : sidebar ? inSidebar() : gBrowser.browsers),
  ]
  // A tab that has been found stays the one, also when its page has gone to another address.
  const sought = popup ?? sidebar ?? tab
  const browser = browsers.findLast((one) => one.foundAs === sought || one.currentURI?.spec.startsWith(sought))
  if (tab && browser) browser.foundAs = tab
  if (!browser?.messageManager) return undefined
  const call = 'call-' + crypto.randomUUID()
  return new Promise((resolve) => {
    const { messageManager } = browser
    // A popup that opens or closes changes what stands behind it, and what was asked before is never answered.
    const gone = setInterval(() => browser.messageManager !== messageManager && end(), 100)
    const end = (said) => {
      clearInterval(gone)
      messageManager.removeMessageListener(call, told)
      resolve(said)
    }
    const told = ({ data }) => end(data)
    messageManager.addMessageListener(call, told)
    setTimeout(() => end(undefined), timeout)
    const code = script.replace('CALL', call)
    messageManager.loadFrameScript('data:application/javascript;charset=utf-8,' + encodeURIComponent(code), false)
  })
}`

/** Beside the page: the nodes that were found are kept there under their number. */
const beside = (body: string): string => `(async () => {
  const { document, Event } = content
  const setTimeout = content.setTimeout.bind(content)
  const nodes = (content.foundNodes ??= [])
  const keep = (node) => {
    const known = nodes.indexOf(node)
    return known < 0 ? nodes.push(node) - 1 : known
  }
  let said
  try {
    said = { value: await (${body})() }
  } catch (error) {
    said = { error: String(error) }
  }
  sendAsyncMessage('CALL', JSON.stringify(said))
})()`

class FirefoxDoor implements Door {
  readonly #session: FirefoxSession
  readonly #place: Place

  constructor(session: FirefoxSession, place: Place) {
    this.#session = session
    this.#place = place
  }

  async #run<T>(body: string): Promise<T> {
    const value = await this.#session.beside<T>(this.#place, body)
    return value
  }

  root(): Promise<Node | undefined> {
    return this.#session.beside<Node | undefined>(
      this.#place,
      `() => (document?.body ? keep(document.body) : undefined)`,
      true,
    )
  }

  find(root: Node, role: string): Promise<{ node: Node; name: string }[]> {
    return this.#run(`() => {
      ${this.#session.roles}
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

  async click(x: number, y: number): Promise<void> {
    await this.#run(`() => (${mouse})(content, ${x}, ${y})`)
  }

  async #keys(keys: readonly string[]): Promise<void> {
    await this.#run(`() => {
      const keyboard = Cc['@mozilla.org/text-input-processor;1'].createInstance(Ci.nsITextInputProcessor)
      keyboard.beginInputTransactionForTests(content)
      for (const key of ${JSON.stringify(keys)}) {
        const event = new content.KeyboardEvent('', { key })
        const flags = key.length === 1 ? 0 : keyboard.KEY_NON_PRINTABLE_KEY
        keyboard.keydown(event, flags)
        keyboard.keyup(event, flags)
      }
    }`)
  }

  type(text: string): Promise<void> {
    return this.#keys([...text])
  }

  press(key: KeyInput): Promise<void> {
    return this.#keys([key])
  }

  async close(): Promise<void> {
    if ('sidebar' in this.#place) return this.#session.closeSidebar()
    await ('tab' in this.#place ? this.#session.closeTab(this.#place.tab) : this.#session.closePopup())
  }
}

export class FirefoxSession {
  readonly browser: Browser
  readonly id = id
  readonly origin = origin
  /** Code that defines `roles`. */
  readonly roles: string
  readonly #window: string

  constructor(browser: Browser, window: string, roles: string) {
    this.browser = browser
    this.roles = roles
    this.#window = window
  }

  /** Calls a function of plain texts and numbers in the browser's own window. */
  async #inWindow<T>(declaration: string, ...args: (string | number)[]): Promise<T> {
    const { connection } = this.browser as unknown as Protocol
    const { result } = await connection.send('script.callFunction', {
      functionDeclaration: declaration,
      awaitPromise: true,
      target: { context: this.#window },
      arguments: args.map((value) => ({ type: typeof value, value })),
    })
    const answer = result as Answer
    if (answer.type === 'exception') throw new Error(answer.exceptionDetails?.text)
    return answer.result?.value as T
  }

  /**
   * Runs a function, given as its text, beside the page of a place.
   * @throws when it fails, or the place is not there, unless it `mayMiss`
   */
  async beside<T>(place: Place, body: string, mayMiss = false): Promise<T> {
    const said = await this.#inWindow<string | undefined>(
      relay,
      JSON.stringify(place),
      beside(body),
      mayMiss ? 2000 : 10_000,
    )
    if (said === undefined) {
      if (mayMiss) return undefined as T
      throw new Error(`${JSON.stringify(place)} is not there.`)
    }
    const { value, error } = JSON.parse(said) as { value: T; error?: string }
    if (error !== undefined) throw new Error(error)
    return value
  }

  async open(url: string): Promise<Page> {
    const page = await this.browser.newPage()
    await page.goto(url, { waitUntil: 'load' })
    await page.bringToFront()
    return page
  }

  /** The popup, whether it is open or not. */
  popup(): Surface {
    return new Surface(new FirefoxDoor(this, { popup: `${origin}/popup.html` }), 'The popup')
  }

  /** The panel in the browser's own sidebar, whether it is open or not. */
  sidebar(): Surface {
    return new Surface(new FirefoxDoor(this, { sidebar: `${origin}/sidepanel.html` }), 'The sidebar')
  }

  /** Presses Alt, Shift and a letter on the browser's window, as the keyboard does. */
  async pressCommand(letter: string): Promise<void> {
    await this.#inWindow(
      `(letter) => {
        // While a page has the focus, a key made here does not come to the command.
        gURLBar.focus()
        const keyboard = Cc['@mozilla.org/text-input-processor;1'].createInstance(Ci.nsITextInputProcessor)
        keyboard.beginInputTransactionForTests(window)
        const held = ['Alt', 'Shift'].map((key) => new KeyboardEvent('', { key, code: key + 'Left' }))
        const pressed = new KeyboardEvent('', { key: letter, code: 'Key' + letter, keyCode: letter.charCodeAt(0) })
        for (const event of held) keyboard.keydown(event)
        keyboard.keydown(pressed)
        keyboard.keyup(pressed)
        for (const event of held.reverse()) keyboard.keyup(event)
      }`,
      letter,
    )
  }

  /** Opens the popup by a click on the toolbar's button, on a page or on the tab in front. */
  async openPopup(page?: Page): Promise<Surface> {
    await page?.bringToFront()
    const widget = `${id.replaceAll(/[^a-z0-9_-]/g, '_')}-BAP`
    const popup = this.popup()
    const opened = await until(async () => {
      // A click that comes before the button is at work does nothing; one while the popup opens would close it.
      await this.#inWindow(
        `async (id) => {
          const box = document.getElementById(id)?.getBoundingClientRect()
          if (!box || document.querySelector('.webextension-popup-browser')) return
          ;(${mouse})(window, box.x + box.width / 2, box.y + box.height / 2)
        }`,
        widget,
      )
      return until(async () => ((await popup.present()) ? true : undefined), 3000)
    }, 20_000)
    if (opened === undefined) throw new Error('The popup did not open.')
    return popup
  }

  /** The dock, which stands in a frame of the extension's own in the page. */
  async helper(page: { url: () => string }): Promise<Surface> {
    const { connection } = this.browser as unknown as Protocol
    const send: Protocol['connection']['send'] = (method, params) => connection.send(method, params)
    const door = new FirefoxDockDoor(
      send,
      () => page.url(),
      this.roles,
      () => this.closeTab(page.url()),
    )
    return new Surface(door, 'The helper')
  }

  /** Waits until a page of the extension, such as /book.html, is open in a tab. */
  async waitForPage(path: string): Promise<Surface> {
    return new Surface(new FirefoxDoor(this, { tab: origin + path }), path)
  }

  async openPage(path: string): Promise<Surface> {
    await this.#inWindow(
      `(url) => {
        const triggeringPrincipal = Services.scriptSecurityManager.getSystemPrincipal()
        gBrowser.selectedTab = gBrowser.addTab(url, { triggeringPrincipal })
      }`,
      origin + path,
    )
    return this.waitForPage(path)
  }

  async closePopup(): Promise<void> {
    await this.#inWindow(`() => document.querySelector('.webextension-popup-browser')?.closest('panel')?.hidePopup()`)
  }

  async closeSidebar(): Promise<void> {
    await this.#inWindow(`() => SidebarController.hide()`)
  }

  async closeTab(url: string): Promise<void> {
    await this.#inWindow(
      `(url) => {
        const tab = gBrowser.tabs.findLast(({ linkedBrowser }) => linkedBrowser.currentURI.spec.startsWith(url))
        if (tab) gBrowser.removeTab(tab)
      }`,
      url,
    )
  }

  async close(): Promise<void> {
    await this.browser.close()
  }
}

export interface FirefoxOptions {
  /** The folder of the extension; the build of this repository if left out. */
  extension?: string
  profile?: string
  /** Whether frames of another site run in the process of their page, where a script beside the page reaches them. */
  oneProcess?: boolean
  /** The home folder that the browser sees: what is managed for a person stands there on Linux. */
  home?: string
}

let roles: Promise<string> | undefined

/** Starts Firefox with the built extension. */
export async function launchFirefox(options: FirefoxOptions = {}) {
  const { extension = builtForFirefox, profile, home, oneProcess = false } = options
  if (!existsSync(join(extension, 'manifest.json')))
    throw new Error(`No built extension stands in ${extension}. Run npm run build first.`)
  const browser = await launchBrowser({
    browser: 'firefox',
    executablePath: findBrowser('firefox'),
    headless: true,
    args: ['-remote-allow-system-access'],
    defaultViewport: null,
    ...(home !== undefined && { env: { ...process.env, HOME: home } }),
    ...(profile !== undefined && { userDataDir: profile }),
    extraPrefsFirefox: {
      'extensions.webextensions.uuids': JSON.stringify({ [id]: origin.replace('moz-extension://', '') }),
      // The question that permissions.request would ask the person cannot be answered without a screen.
      'extensions.webextOptionalPermissionPrompts': false,
      // An extension that is not signed is installed anew at each start, and finds there what it kept.
      'extensions.webextensions.keepStorageOnUninstall': true,
      'extensions.webextensions.keepUuidOnUninstall': true,
      ...(oneProcess && { 'fission.autostart': false }),
    },
  })
  await browser.installExtension(extension)
  const { connection } = browser as unknown as Protocol
  const { result } = await connection.send('browsingContext.getTree', { 'moz:scope': 'chrome' })
  const [window] = (result as { contexts: { context: string }[] }).contexts
  if (window === undefined) throw new Error('Firefox shows no window of its own.')
  // Made once: a soak starts the browser hundreds of times.
  return new FirefoxSession(browser, window.context, await (roles ??= bundle('./roles.ts', 'roles')))
}
