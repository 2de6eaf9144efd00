/** Runs lib/form in the isolated world of a page, as the browser runs a content script, without the extension around it. */
import { fileURLToPath } from 'node:url'
import { launch, type Browser, type CDPSession, type Page } from 'puppeteer-core'
import { build, type Plugin } from 'vite'
import { findBrowser } from './find-browser.ts'

const path = (relative: string): string => fileURLToPath(new URL(relative, import.meta.url))

/** One file of script from a module and everything it imports; its exports are properties of the global `name`. */
export async function bundle(
  entry: string,
  name: string,
  mode: 'development' | 'production' = 'production',
  plugins: Plugin[] = [],
): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    mode,
    plugins,
    define: { 'process.env.NODE_ENV': JSON.stringify(mode) },
    build: {
      write: false,
      minify: mode === 'production',
      lib: { entry: path(entry), name, formats: ['iife'], fileName: 'bundle' },
    },
  })
  const [first] = Array.isArray(built) ? built : [built]
  const chunk = first && 'output' in first ? first.output[0] : undefined
  if (!chunk || chunk.type !== 'chunk') throw new Error(`${entry} gave no script.`)
  return chunk.code
}

export function startBrowser(): Promise<Browser> {
  return launch({
    executablePath: findBrowser('chromium'),
    headless: true,
    pipe: true,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--disable-component-update',
      '--disable-background-networking',
      '--disable-sync',
    ],
  })
}

/** A page and the world beside it in which the form code runs. */
export class Bench {
  readonly page: Page
  readonly #session: CDPSession
  readonly #context: number

  private constructor(page: Page, session: CDPSession, context: number) {
    this.page = page
    this.#session = session
    this.#context = context
  }

  /** Opens the markup, runs the page's own script in it, and loads the form code into an isolated world. */
  static async open(browser: Browser, form: string, markup: string, script = ''): Promise<Bench> {
    const page = await browser.newPage()
    await page.setContent(markup)
    if (script) await page.addScriptTag({ content: script })
    await page.bringToFront()
    const session = await page.createCDPSession()
    const { frameTree } = await session.send('Page.getFrameTree')
    const { executionContextId } = await session.send('Page.createIsolatedWorld', {
      frameId: frameTree.frame.id,
      worldName: 'helper',
      grantUniveralAccess: false,
    })
    const bench = new Bench(page, session, executionContextId)
    await bench.evaluate(`${form}; undefined`)
    return bench
  }

  /** Value of an expression in the isolated world; promises are awaited. */
  async evaluate<T>(expression: string): Promise<T> {
    const { result, exceptionDetails } = await this.#session.send('Runtime.evaluate', {
      expression,
      contextId: this.#context,
      awaitPromise: true,
      returnByValue: true,
    })
    if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text)
    return result.value as T
  }

  /** Calls a function of the bench module in the isolated world. */
  call<T>(name: string, ...args: unknown[]): Promise<T> {
    return this.evaluate<T>(`bench.${name}(${args.map((arg) => JSON.stringify(arg)).join(', ')})`)
  }
}
