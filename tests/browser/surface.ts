/** A part of the screen driven as a person would: found by role and accessible name, used by mouse and keyboard. */
import type { KeyInput, Page } from 'puppeteer-core'
import { ChromiumDoor, type Door, type Node } from './door.ts'

export type Name = string | RegExp

interface Found {
  node: Node
  role: string
  name: string
}

export interface Focused {
  name: string
  /** The element's own: `button` */
  kind: string
  /** Whether it has a ring around it. */
  ringed: boolean
  /** Whether it is in the window with nothing over it. */
  seen: boolean
}

const pause = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms)
  })

/** Repeats `attempt` until it gives something other than undefined, at most for `ms`. */
export async function until<T>(attempt: () => Promise<T | undefined>, ms = 20_000): Promise<T | undefined> {
  const end = Date.now() + ms
  for (;;) {
    const result = await attempt()
    if (result !== undefined) return result
    if (Date.now() > end) return undefined
    await pause(50)
  }
}

function fits(text: string, name: Name | undefined): boolean {
  if (name === undefined) return true
  return typeof name === 'string' ? text === name : name.test(text)
}

/** Something lies over what was to be clicked. */
class Covered extends Error {}

export class Surface {
  readonly #door: Door
  readonly #called: string
  readonly #page: Page | undefined

  constructor(door: Door, called: string, page?: Page) {
    this.#door = door
    this.#called = called
    this.#page = page
  }

  /**
   * The driver's own page.
   * @throws where the browser has none for this part
   */
  get page(): Page {
    if (this.#page === undefined) throw new Error(`${this.#called} is no page of the driver.`)
    return this.#page
  }

  /** Whether this part is on the screen at all. */
  async present(): Promise<boolean> {
    return (await this.#door.root()) !== undefined
  }

  async close(): Promise<void> {
    await this.#door.close()
  }

  async #root(): Promise<number> {
    const root = await until(() => this.#door.root())
    if (root === undefined) throw new Error(`${this.#called} did not appear.`)
    return root
  }

  #call<T>(node: Node, declaration: string, args: unknown[] = []): Promise<T> {
    return this.#door.call<T>(node, declaration, args)
  }

  /** Every element of a role, in the order of the screen. */
  async all(role: string, name?: Name): Promise<Found[]> {
    const found = await this.#door.find(await this.#root(), role)
    return found.flatMap((one) => (fits(one.name, name) ? [{ ...one, role }] : []))
  }

  /** The first element of that role and name, waited for. */
  async get(role: string, name?: Name, ms = 20_000): Promise<Found> {
    const found = await until(async () => (await this.all(role, name).catch(() => []))[0], ms)
    if (found !== undefined) return found
    const there = (await this.all(role)).map((one) => JSON.stringify(one.name))
    throw new Error(
      `${this.#called} has no ${role} ${String(name)}. It has: ${there.join(', ') || 'none of that role'}.\n${await this.text()}`,
    )
  }

  async has(role: string, name?: Name): Promise<boolean> {
    return (await this.all(role, name)).length > 0
  }

  /** Brings an element to the middle of its scroller and clicks its own middle, unless something covers it there. */
  async #press(found: Found): Promise<void> {
    const { node } = found
    // A person waits until what they aim at stands still.
    await this.#call(
      node,
      `async function () {
        let before = ''
        for (let turn = 0; turn < 20; turn++) {
          this.scrollIntoView({ block: 'center', behavior: 'instant' })
          const { x, y, width, height } = this.getBoundingClientRect()
          const now = [x, y, width, height].join()
          if (now === before) return
          before = now
          await new Promise((done) => setTimeout(done, 60))
        }
      }`,
    )
    const at = await this.#door.middle(node)
    if (at === undefined) throw new Error(`${found.role} "${found.name}" of ${this.#called} has no place on screen.`)
    const covering = await this.#call<string>(
      node,
      `function (x, y) {
        const top = this.getRootNode().elementFromPoint(x, y)
        if (top && (this.contains(top) || top.contains(this) || top.control === this)) return ''
        return top ? top.outerHTML.slice(0, 200) : 'nothing: it is outside the window'
      }`,
      [at.x, at.y],
    )
    if (covering) throw new Covered(`${found.role} "${found.name}" of ${this.#called} is covered by ${covering}.`)
    await this.#door.click(at.x, at.y)
  }

  /** Clicks the middle of an element with the mouse; one that the page draws anew or moves meanwhile is looked for again. */
  async click(role: string, name?: Name): Promise<void> {
    for (let turn = 0; ; turn++) {
      const found = await this.get(role, name)
      try {
        return await this.#press(found)
      } catch (error) {
        if (turn === 3) throw error
        if (error instanceof Covered) await pause(200)
        else if (await this.#isConnected(found)) throw error
      }
    }
  }

  #isConnected({ node }: Found): Promise<boolean> {
    return this.#call<boolean>(node, 'function () { return this.isConnected }').catch(() => false)
  }

  /** Clicks the summary of a section, brought clear of what stays on the screen, as a person would scroll first. */
  async fold(section: string): Promise<void> {
    const summary = await this.page.waitForSelector(`#${section} > summary`)
    await summary?.evaluate((part) => part.scrollIntoView({ block: 'center', behavior: 'instant' }))
    await summary?.click()
  }

  /** Clicks an element that was found before. */
  async clickFound(found: Found): Promise<void> {
    await this.#press(found)
  }

  /** Replaces what an input holds, by keyboard. */
  async type(role: string, name: Name, text: string): Promise<void> {
    const found = await this.get(role, name)
    await this.#press(found)
    await this.#call(found.node, 'function () { this.select?.() }')
    if (text === '') await this.#door.press('Backspace')
    else await this.#door.type(text)
  }

  async key(key: KeyInput): Promise<void> {
    await this.#door.press(key)
  }

  /** Chooses an option of a native select by its words, as the browser's own list would. */
  async choose(name: Name, option: Name, group = ''): Promise<void> {
    const found = await this.get('combobox', name)
    const options = await this.#call<{ label: string; group: string }[]>(
      found.node,
      `function () {
        return [...this.options].map(({ label, parentElement }) => ({ label, group: parentElement.label ?? '' }))
      }`,
    )
    const index = options.findIndex((one) => fits(one.label, option) && one.group === group)
    if (index < 0) {
      const there = options.map((one) => `${one.group}: ${one.label}`).join(', ')
      throw new Error(`${found.name} has no option ${String(option)}. It has: ${there}.`)
    }
    await this.#call(
      found.node,
      `function (index) {
        this.focus()
        this.selectedIndex = index
        this.dispatchEvent(new Event('input', { bubbles: true, composed: true }))
        this.dispatchEvent(new Event('change', { bubbles: true }))
      }`,
      [index],
    )
  }

  async value(role: string, name: Name): Promise<string> {
    return this.#call((await this.get(role, name)).node, 'function () { return this.value }')
  }

  /** Whether a tab or link is the one that is shown. */
  async isCurrent(found: Found): Promise<boolean> {
    return this.#call(found.node, `function () { return this.ariaCurrent === 'true' }`)
  }

  async textOf(found: Found): Promise<string> {
    return this.#call(found.node, 'function () { return this.innerText ?? this.textContent }')
  }

  /** The words on the screen, one line per line. */
  async text(): Promise<string> {
    return this.#call(
      await this.#root(),
      `function () {
        return [...this.children].filter((e) => e.localName !== 'style').map((e) => e.innerText ?? '').join('\\n')
      }`,
    )
  }

  /** What a function, given as its text, makes of where this part begins; `this` is that. */
  async ask<T>(declaration: string): Promise<T> {
    return this.#call<T>(await this.#root(), declaration)
  }

  /** The sentence about the cell that is marked as wrong, or the first sentence of a finding; waited for. */
  async finding(): Promise<string> {
    const root = await this.#root()
    const said = await until(async () => {
      const text = await this.#call<string>(
        root,
        `function () {
          const cell = this.querySelector('[aria-invalid=true]')
          const id = cell?.getAttribute('aria-describedby')
          const about = id ? document.getElementById(id) : this.querySelector('[id^=found-]')
          return about?.innerText.trim() ?? ''
        }`,
      )
      return text || undefined
    }, 5000)
    if (said === undefined)
      throw new Error(`${this.#called} says nothing about any cell. It shows:\n${await this.text()}`)
    return said
  }

  /** The cells of every table row, as text. */
  async rows(): Promise<string[][]> {
    return this.#call(
      await this.#root(),
      `function () {
        return [...this.querySelectorAll('tr')].map((row) => [...row.cells].map((cell) => cell.innerText.trim()))
      }`,
    )
  }

  /** Waits until the words on the screen fit. */
  async wait(words: RegExp, ms = 15_000): Promise<string> {
    let last = ''
    const found = await until(async () => {
      last = await this.text().catch(() => '')
      return words.test(last) ? last : undefined
    }, ms)
    if (found === undefined) throw new Error(`${this.#called} never showed ${String(words)}. It shows:\n${last}`)
    return found
  }

  /** What has the focus, if anything here has; and whether a person sees that it has. */
  async focused(): Promise<Focused | undefined> {
    return (
      (await this.#call<Focused | null>(
        await this.#root(),
        `function () {
          const scope = this.getRootNode()
          const it = scope.activeElement
          if (!it || it.localName === 'body') return null
          const { left, top, width, height } = it.getBoundingClientRect()
          // A field inside a framed label has its ring around the frame.
          const rings = [it, it.closest('label')].filter(Boolean).map((one) => getComputedStyle(one))
          const parts = [[0.5, 0.5], [0.1, 0.5], [0.9, 0.5], [0.5, 0.2], [0.5, 0.8]]
          const seen = parts.some(([x, y]) => {
            const over = scope.elementFromPoint(left + width * x, top + height * y)
            return over && (it.contains(over) || over.contains(it) || [...(it.labels ?? [])].some((one) => one.contains(over)))
          })
          return {
            name: (it.ariaLabel || [...(it.labels ?? [])].map((one) => one.innerText).join(' ') || it.innerText || '')
              .replaceAll(/\\s+/g, ' ').trim(),
            kind: it.localName,
            // The button for the calendar inside a date field has the browser's own ring.
            ringed: (it.type === 'date' && !it.matches(':focus-visible')) ||
              (it.matches(':focus-visible') &&
                rings.some(({ outlineStyle, outlineWidth }) => outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2)),
            seen,
          }
        }`,
      )) ?? undefined
    )
  }

  /** Waits until this part has left the screen. */
  async gone(): Promise<void> {
    const left = await until(async () => ((await this.present()) ? undefined : true))
    if (left === undefined) throw new Error(`${this.#called} did not close.`)
  }
}

/** A whole page: the popup, the book, a form. */
export async function whole(page: Page, called: string): Promise<Surface> {
  return new Surface(new ChromiumDoor(page, await page.createCDPSession()), called, page)
}

/** The dock, which stands in a frame of the extension's own in the page. */
export async function helper(page: Page): Promise<Surface> {
  return new Surface(new ChromiumDoor(page, await page.createCDPSession(), true), 'The helper', page)
}
