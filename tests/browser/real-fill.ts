/** Maps every field of a page, fills it through the real action, and compares the page's own state with what is told. */
import type { Page } from 'puppeteer-core'
import type { Binding, Clues, FormMap, Source } from '../../lib/form/schema.ts'
import type { PageField } from '../pages/frameworks/pages.ts'
import { inExtensionWorld } from './extension-world.ts'
import { helper, type Session, type Surface } from './harness.ts'
import { bundle } from './isolated.ts'
import { linesOf, openDemo, openPlan, type Line } from './round.ts'

export interface TestedPage {
  name: string
  url: string
  fields: readonly PageField[]
  /** Keys of the page's state that follow from the fields. */
  follows?: readonly string[]
  /** What leads on where the page shows one step after the other. */
  next?: string
  /** Origin of the frame that holds part of the form. */
  apart?: string | undefined
}

export interface Told {
  control: string
  kind: string
  intended: string
  outcome: string
  readBack: string
  holds: unknown
  right: boolean
  /** After putting back: `back`, or the outcome of the line where the page holds something else than before. */
  undone: string
}

type State = Record<string, unknown>

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

/** What the page and the frames in it hold, as their own scripts say. */
async function stateOf(page: Page): Promise<State> {
  const all: State = {}
  for (const frame of page.frames())
    Object.assign(all, await frame.evaluate(() => (window as { pageState?: () => unknown }).pageState?.() ?? {}))
  return all
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)

/** Pages hold nothing entered as undefined or null before the first change, as an empty text or false after it. */
const sameAgain = (a: unknown, b: unknown): boolean => same(a || '', b || '')

function lineOf(lines: readonly Line[], { name, section }: PageField): Line | undefined {
  return lines.find((line) => line.control === name && (section === undefined || line.section === section))
}

export class RealFill {
  readonly #session: Session
  readonly #form: string
  readonly #book: Page
  readonly #keep: string
  readonly #pages = new Set<Page>()

  private constructor(session: Session, form: string, book: Page, keep: string) {
    this.#session = session
    this.#form = form
    this.#book = book
    this.#keep = keep
  }

  static async start(session: Session): Promise<RealFill> {
    const [form, keep, { page }] = await Promise.all([
      bundle('../pages/controls/bench.ts', 'bench'),
      bundle('../browser/keep-map.ts', 'keeper'),
      session.openPage('/book.html'),
    ])
    return new RealFill(session, form, page, keep)
  }

  async #visit({ url }: TestedPage): Promise<Page> {
    const page = await this.#session.open(url)
    this.#pages.add(page)
    // Drawn by the page's script: a field, or an element of its own that holds fields.
    await page.waitForFunction(
      () => [...document.body.querySelectorAll('*')].some(({ localName }) => /^input$|-/.test(localName)),
      { polling: 50 },
    )
    return page
  }

  async close(): Promise<void> {
    for (const page of this.#pages) await page.close().catch(() => undefined)
    this.#pages.clear()
  }

  /** The clues of every control that the helper sees on the page now, those in a frame of another origin too. */
  async #clues(page: Page, apart?: string): Promise<Clues[]> {
    const own = await inExtensionWorld<Clues[]>(this.#session, page, `${this.#form}; bench.clues()`)
    const frame = apart === undefined ? undefined : page.frames().find((each) => each.url().startsWith(apart))
    if (!frame) return own
    // Nothing in this frame is closed to its own script.
    const inside = (await frame.evaluate(`${this.#form}; bench.clues()`)) as Clues[]
    const { origin, pathname } = new URL(frame.url())
    for (const clues of inside) clues.frame = { origin, path: pathname }
    return [...own, ...inside]
  }

  /** Goes to the next step as a person does, who has to enter something first. */
  async #goOn(page: Page, next: string, fill: boolean): Promise<void> {
    const before = await page.evaluate(() => document.body.innerText)
    if (fill)
      await page.evaluate(() => {
        for (const input of document.querySelectorAll<HTMLInputElement>('input')) {
          input.value = input.type === 'date' ? '2020-01-01' : '1'
          input.dispatchEvent(new Event('input', { bubbles: true }))
        }
      })
    await page.evaluate((selector) => document.querySelector<HTMLElement>(selector)?.click(), next)
    await page.waitForFunction(
      (old: string) => document.body.innerText !== old && document.querySelector('input') !== null,
      { polling: 50 },
      before,
    )
    await pause(100)
  }

  /** Bindings for all fields, by the clues that the helper has of them. */
  async #map(tested: TestedPage): Promise<Binding[]> {
    const { fields, next, apart } = tested
    const page = await this.#visit(tested)
    await (await openDemo(this.#session, page)).click('button', 'Map this page')
    const ui = await helper(page)
    await ui.wait(/Pick a control/)
    if (apart) await ui.wait(/of [7-9] controls bound/)
    const bindings: Binding[] = []
    const last = Math.max(...fields.map(({ step = 1 }) => step))
    for (let step = 1; step <= last; step++) {
      if (step > 1 && next) await this.#goOn(page, next, true)
      const all = await this.#clues(page, apart)
      for (const [at, { name, section, text, file, step: own = 1 }] of fields.entries()) {
        if (own !== step) continue
        const control = all.find((each) => each.name === name && (section === undefined || each.section === section))
        if (!control)
          throw new Error(
            `${tested.name} shows no “${section ?? ''} / ${name}”, only: ${all.map((each) => `${each.section} / ${each.name}`).join(', ')}`,
          )
        const source: Source = file ? { from: 'file', name: text, type: 'text/csv' } : { from: 'text', text }
        const binding: Binding = { id: String(at), control, source }
        bindings.push(step > 1 ? { ...binding, step } : binding)
      }
    }
    await ui.click('button', 'Close')
    await ui.gone()
    await this.close()
    return bindings
  }

  async #keepMap({ name, url }: TestedPage, bindings: Binding[]): Promise<void> {
    const { origin, pathname } = new URL(url)
    const map: FormMap = {
      id: `page ${name}`,
      name,
      version: 1,
      created: '',
      updated: '',
      address: { origin, path: pathname },
      bindings,
    }
    await this.#book.evaluate(`${this.#keep}; keeper.saveMap(${JSON.stringify(map)}).then(() => true)`)
  }

  async #receipt(ui: Surface): Promise<Line[]> {
    await ui.click('button', /^(Fill|Put back) \d+ controls?$/)
    await ui.wait(/controls? (entered|put back)/, 90_000)
    return linesOf(await ui.rows(), { control: 1, text: 2, readBack: 3 })
  }

  /** The whole way: what the page held at the plan, what it holds and what is told after the fill and after the undo. */
  async run(tested: TestedPage): Promise<{ told: Told[]; early: string[]; strays: string[]; lines: number }> {
    const bindings = await this.#map(tested)
    await this.#keepMap(tested, bindings)
    const page = await this.#visit(tested)
    const before = await stateOf(page)
    const ui = await openPlan(this.#session, page)
    const planned = await stateOf(page)
    const early = Object.keys(planned).filter((key) => !same(planned[key], before[key]))

    const receipt: Line[] = []
    const last = Math.max(...tested.fields.map(({ step = 1 }) => step))
    for (let step = 1; step <= last; step++) {
      if (step > 1 && tested.next) {
        await this.#goOn(page, tested.next, false)
        await ui.click('button', `Go on: step ${step} of ${last}`)
        await ui.wait(new RegExp(`Step ${step} of ${last}`))
      }
      receipt.push(...(await this.#receipt(ui)))
    }
    const after = await stateOf(page)
    const meant = new Set([...tested.fields.map(({ state }) => state), ...(tested.follows ?? [])])
    const strays = Object.keys(after).filter((key) => !meant.has(key) && !same(after[key], before[key]))

    let back: Line[] = []
    let end = after
    // A step that has gone by is no longer on the page.
    if (last === 1) {
      await ui.click('button', 'Put back what was there')
      await ui.wait(/Nothing is typed until you confirm/)
      if (await ui.has('button', /^Put back \d+ controls?$/)) {
        back = await this.#receipt(ui)
        end = await stateOf(page)
      }
    }
    const told = tested.fields.map((field, at): Told => {
      const line = lineOf(receipt, field)
      const undone = lineOf(back, field)?.outcome ?? 'not offered'
      return {
        control: field.name,
        kind: bindings.find(({ id }) => id === String(at))?.control.kind ?? '',
        intended: field.text,
        outcome: line?.outcome ?? '',
        readBack: line?.readBack ?? '',
        holds: after[field.state],
        right: field.file
          ? String(after[field.state]).startsWith(String(field.holds))
          : same(after[field.state], field.holds),
        undone: last > 1 ? '' : sameAgain(end[field.state], before[field.state]) ? 'back' : undone,
      }
    })
    await this.close()
    return { told, early, strays, lines: receipt.length }
  }
}
