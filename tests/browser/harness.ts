/**
 * A real Chromium with the built extension in it.
 *
 * An unpacked extension gets its id from its folder's path, so installing it again from the same folder after a restart
 * gives the same origin, and with it the same IndexedDB and storage.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { launch as launchBrowser, type Browser, type Extension, type Page, type Target } from 'puppeteer-core'
import { findBrowser } from './find-browser.ts'
import { helper, Surface, whole } from './surface.ts'

/** BUILT names another folder than this repository's build. */
export const built = process.env['BUILT'] ?? fileURLToPath(new URL('../../.output/chrome-mv3', import.meta.url))

export interface Options {
  userDataDir?: string
  headless?: boolean
  /** The folder of the extension; the build of this repository if left out. */
  extension?: string
  /** Device pixels per CSS pixel. */
  scale?: number
  dark?: boolean
  /** Of the browser's own interface, and so of the extension; English if left out. */
  language?: string
  /** Milliseconds that one call to a page may take; 0: as long as it likes. */
  patience?: number
}

/** One request as the browser's network log has it. `by` is the origin that asked, if a page or worker did. */
export interface Logged {
  url: string
  by: string
}

const quiet = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--disable-component-update',
  '--disable-background-networking',
  '--disable-sync',
  '--disable-default-apps',
  '--no-first-run',
]

export class Session {
  readonly options: Options
  readonly profile: string
  readonly #ownProfile: boolean
  browser!: Browser
  extension!: Extension

  constructor(options: Options) {
    this.options = options
    this.#ownProfile = options.userDataDir === undefined
    this.profile = options.userDataDir ?? mkdtempSync(join(tmpdir(), 'profile-'))
  }

  get id(): string {
    return this.extension.id
  }

  /** Where the extension's own pages stand. */
  get origin(): string {
    return `chrome-extension://${this.id}`
  }

  get #netLog(): string {
    return join(this.profile, 'network.json')
  }

  async start(): Promise<void> {
    const extension = this.options.extension ?? built
    if (!existsSync(join(extension, 'manifest.json')))
      throw new Error(`No built extension stands in ${extension}. Run npm run build first.`)
    this.browser = await launchBrowser({
      executablePath: findBrowser('chromium'),
      headless: this.options.headless ?? true,
      ...(this.options.patience !== undefined && { protocolTimeout: this.options.patience }),
      pipe: true,
      enableExtensions: true,
      userDataDir: this.profile,
      // On Linux the environment has the say in the language, not the argument.
      env: { ...process.env, LANGUAGE: this.options.language ?? 'en-US' },
      defaultViewport:
        this.options.headless === false
          ? null
          : { width: 1280, height: 900, deviceScaleFactor: this.options.scale ?? 1 },
      args: [
        ...quiet,
        `--log-net-log=${this.#netLog}`,
        // The popup may be no larger than the screen, which headless is small unless told.
        `--screen-info={3200x2400 devicePixelRatio=${this.options.scale ?? 1}}`,
        ...(this.options.dark === true ? ['--force-dark-mode'] : []),
        `--lang=${this.options.language ?? 'en-US'}`,
      ],
    })
    await this.loadAnew()
  }

  /** Installs the extension, over itself where it is there, as an update does. */
  async loadAnew(): Promise<void> {
    const extension = this.options.extension ?? built
    const id = await this.browser.installExtension(extension)
    const installed = (await this.browser.extensions()).get(id)
    if (installed === undefined) throw new Error(`The extension in ${extension} was not installed.`)
    this.extension = installed
  }

  /** Opens an address in a new tab and brings it to the front. */
  async open(url: string): Promise<Page> {
    const page = await this.browser.newPage()
    await page.goto(url, { waitUntil: 'load' })
    await page.bringToFront()
    return page
  }

  /** Opens the popup on a page by the toolbar's own action, which also grants activeTab. */
  async openPopup(page: Page): Promise<Surface> {
    await page.bringToFront()
    const opened = this.browser.waitForTarget((target) => this.#isOurs(target, '/popup.html'), { timeout: 15_000 })
    await page.triggerExtensionAction(this.extension)
    const popup = await (await opened).asPage()
    return whole(popup, 'The popup')
  }

  /** What the extension draws into a page, inside its closed shadow root. */
  helper(page: Page): Promise<Surface> {
    return helper(page)
  }

  #isOurs(target: Target, path: string): boolean {
    return target.url().startsWith(this.origin + path)
  }

  /** Waits until a page of the extension, such as /book.html, is open in a tab. */
  async waitForPage(path: string): Promise<Surface> {
    const target = await this.browser.waitForTarget((one) => this.#isOurs(one, path), { timeout: 15_000 })
    return whole(await target.asPage(), path)
  }

  /** Opens a page of the extension in a tab. */
  async openPage(path: string): Promise<Surface> {
    return whole(await this.open(this.origin + path), path)
  }

  /**
   * Ends every process of the browser at once, as a power cut would, and starts it again on the same profile.
   * @param meanwhile what is done to the profile while nothing runs
   */
  async restart(meanwhile?: () => void): Promise<void> {
    const child = this.browser.process()
    const pid = child?.pid
    if (child === null || pid === undefined) throw new Error('The browser has no process to end.')
    const ended = new Promise((resolve) => {
      child.once('exit', resolve)
    })
    // Puppeteer starts the browser as the leader of its own process group.
    process.kill(-pid, 'SIGKILL')
    await ended
    meanwhile?.()
    await this.start()
  }

  async close(): Promise<void> {
    await this.browser.close()
    if (this.#ownProfile) rmSync(this.profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 })
  }

  /**
   * Closes the browser and returns every request that left it, from any page, worker, extension or the browser itself,
   * out of Chromium's own network log.
   */
  async closeAndReadNetwork(): Promise<Logged[]> {
    await this.browser.close()
    const log = parseNetLog(readFileSync(this.#netLog, 'utf8'))
    await this.close()
    return log
  }
}

interface NetLog {
  constants: { logEventTypes: Record<string, number> }
  events: { type: number; params?: { url?: string; initiator?: string } }[]
}

function parseNetLog(text: string): Logged[] {
  const log = JSON.parse(text) as NetLog
  const start = log.constants.logEventTypes['URL_REQUEST_START_JOB']
  return log.events.flatMap(({ type, params }) => {
    if (type !== start || params?.url === undefined) return []
    const by = params.initiator ?? ''
    return [{ url: params.url, by: by === 'not an origin' ? '' : by }]
  })
}

/** What a round needs of a browser with the extension in it. */
export type Driver = Pick<Session, 'open' | 'openPopup' | 'waitForPage' | 'helper'>

/** Starts Chromium with the built extension. */
export async function launch(options: Options = {}): Promise<Session> {
  const session = new Session(options)
  await session.start()
  return session
}

export { helper, Surface, whole }
