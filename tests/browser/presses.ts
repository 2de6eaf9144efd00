/** Presses buttons the moment they are drawn, and tells which had no effect and which lost the focus. */
import type { Page } from 'puppeteer-core'
import { dockOf } from './door.ts'
import { until, type Surface } from './surface.ts'

export interface Pressed {
  presses: number
  /** Names of buttons whose press changed, opened, asked and said nothing. */
  dead: string[]
  /** Names of buttons after whose press nothing had the focus. */
  lost: string[]
  /** Name of the button that comes next, where only a real press counts or the page goes away by it. */
  next?: string
}

interface Wish {
  presses: number
  seed: number
  /** Loops that keep the page's thread busy between presses. */
  busy: number
  /** Names of the buttons that are left to the caller, as the source of an expression. */
  left?: string
}

// The function is sent into the page as text, so all that it calls stands inside it.
/* oxlint-disable unicorn/consistent-function-scoping */
async function pressIn({ presses, seed, busy, left }: Wish): Promise<Pressed> {
  const found: Pressed = { presses: 0, dead: [], lost: [] }
  let state = seed
  const random = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
  const rest = (ms: number) =>
    new Promise((resolve) => {
      setTimeout(resolve, ms)
    })
  /** What a press came to outside the document is counted, and kept from leaving this page. */
  let effects = 0
  const counts = (holder: object, name: string, answer: unknown) =>
    Object.defineProperty(holder, name, {
      configurable: true,
      writable: true,
      value: () => {
        effects++
        return answer
      },
    })
  /** What the dock tells the page around it is an effect that the dock does not show. */
  if (left !== undefined) {
    const { postMessage } = MessagePort.prototype
    MessagePort.prototype.postMessage = function (this: MessagePort, ...all: unknown[]) {
      effects++
      return (postMessage as (...given: unknown[]) => void).apply(this, all)
    } as typeof postMessage
  }
  const { chrome } = globalThis as unknown as { chrome: Record<'tabs' | 'permissions' | 'sidePanel', object> }
  counts(chrome.tabs, 'create', Promise.resolve({}))
  counts(chrome.permissions, 'request', Promise.resolve(false))
  if (chrome.sidePanel) counts(chrome.sidePanel, 'open', Promise.resolve())
  counts(globalThis, 'print', undefined)
  counts(globalThis, 'close', undefined)
  counts(navigator.clipboard, 'writeText', Promise.resolve())
  counts(HTMLAnchorElement.prototype, 'click', undefined)
  counts(HTMLInputElement.prototype, 'showPicker', undefined)
  addEventListener('click', (event) => {
    const file = event.target instanceof HTMLInputElement && event.target.type === 'file'
    if (file) event.preventDefault()
    if (file) effects++
  })
  for (const type of ['hashchange', 'popstate', 'scroll']) addEventListener(type, () => effects++, true)
  document.addEventListener('toggle', () => effects++, true)

  const open = 'button:not(:disabled), summary, [role=button]'
  let fresh: HTMLElement[] = []
  const seen = new MutationObserver((records) => {
    effects += records.length
    for (const { addedNodes } of records)
      for (const node of addedNodes) {
        if (!(node instanceof HTMLElement)) continue
        if (node.matches(open)) fresh.push(node)
        fresh.push(...node.querySelectorAll<HTMLElement>(open))
      }
  })
  seen.observe(document.documentElement, { subtree: true, childList: true, characterData: true, attributes: true })

  const shown = (one: HTMLElement) => one.isConnected && one.checkVisibility() && !one.matches(':disabled')
  const nameOf = (one: HTMLElement) => (one.ariaLabel ?? one.textContent ?? '').trim().slice(0, 60)
  for (let loop = 0; loop < busy; loop++)
    void (async () => {
      while (found.presses < presses && found.next === undefined) {
        const end = performance.now() + 30
        while (performance.now() < end) Math.sqrt(end)
        await rest(0)
      }
    })()

  for (; found.presses < presses; found.presses++) {
    const news = fresh.filter(shown)
    const all = [...document.querySelectorAll<HTMLElement>(open)].filter(shown)
    const from = news.length > 0 && random() < 0.8 ? news : all
    const button = from[Math.floor(random() * from.length)]
    fresh = []
    if (!button) {
      await rest(50)
      continue
    }
    const name = nameOf(button)
    if (left !== undefined && new RegExp(left).test(name)) {
      found.next = name
      break
    }
    const before = [effects, document.activeElement, location.href] as const
    button.focus()
    button.click()
    // A press that leads to a form which stands open gives the focus to it.
    const acted = () => effects > before[0] || location.href !== before[2] || document.activeElement !== button
    for (let turn = 0; turn < 150 && !acted(); turn++) await rest(20)
    if (!acted()) found.dead.push(name)
    if (random() < 0.5) {
      // Half of the presses come as soon as the last one shows; after the others the page settles.
      for (let last = -1; last !== effects; await rest(60)) last = effects
      if (document.activeElement === document.body || document.activeElement === null) found.lost.push(name)
    }
  }
  seen.disconnect()
  return found
}

/** Presses buttons of a page of the extension until so many presses are done; each part begins with a page loaded anew. */
export async function pressAll(view: Surface, { presses, seed, busy }: Wish, each = 50): Promise<Pressed> {
  const all: Pressed = { presses: 0, dead: [], lost: [] }
  while (all.presses < presses) {
    const part = { presses: Math.min(each, presses - all.presses), seed: seed + all.presses, busy }
    const found = await view.page.evaluate(pressIn, part)
    all.presses += found.presses
    all.dead.push(...found.dead)
    all.lost.push(...found.lost)
    await view.page.reload()
    await view.page.waitForSelector('button')
  }
  return all
}

/** A real press alone fills, and these lead out of the dock: the caller presses them, and looks at what came of it. */
const leavesDock = '^(Fill \\d|Put back|Close|Open book|Open the book|Done|Allow )'

/**
 * The same in the dock; each part begins with a page of its own, for a mouse that took the dock away is not answered.
 * @param open opens a page with the dock in it
 */
export async function pressDock(
  open: () => Promise<{ page: Page; ui: Surface }>,
  wish: Wish,
  each = 20,
): Promise<Pressed> {
  const all: Pressed = { presses: 0, dead: [], lost: [] }
  while (all.presses < wish.presses) {
    const { page, ui } = await open()
    const part = { ...wish, presses: Math.min(each, wish.presses - all.presses), left: leavesDock }
    const seed = wish.seed + all.presses
    const { result, exceptionDetails } = await dockOf(page).send('Runtime.evaluate', {
      expression: `(${pressIn.toString()})(${JSON.stringify({ ...part, seed })})`,
      awaitPromise: true,
      returnByValue: true,
    })
    if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text)
    const found = result.value as Pressed
    all.presses += found.presses
    all.dead.push(...found.dead)
    all.lost.push(...found.lost)
    if (found.next !== undefined) {
      all.presses += 1
      const before = await ui.text()
      const tabs = (await page.browser().pages()).length
      const start = found.next.replaceAll(/[\\^$.*+?()[\]{}|]/g, '\\$&')
      const name = new RegExp(`^${start}`)
      // Looked for again where it was drawn anew under the pointer: what was not pressed has no effect yet.
      let why = ''
      const pressed = await until(async () => {
        if (!(await ui.present())) return true
        return ui.click('button', name).then(
          () => true as const,
          (error: unknown) => void (why = String(error)),
        )
      })
      if (!pressed) throw new Error(`The button ${found.next} of the dock could not be pressed. ${why}`)
      const acted = await until(async () => {
        if ((await page.browser().pages()).length > tabs || !(await ui.present())) return true
        return (await ui.text().catch(() => '')) === before ? undefined : true
      })
      if (!acted) all.dead.push(found.next)
    }
    await page.close()
  }
  return all
}
