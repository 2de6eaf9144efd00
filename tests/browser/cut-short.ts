/**
 * A fill that is disturbed at each of its steps: 0 is the press, 1 to 7 the moment at which that control was written, 8
 * the receipt. Whatever becomes of it, what the receipt and the entry say is what the page holds.
 */
import type { Page } from 'puppeteer-core'
import { launch, type Session } from './harness.ts'
import { hold } from './hold-book.ts'
import { asked, Attacked, heldBy, type Held } from './hostile.ts'
import { linesOf, type Line } from './round.ts'
import { until, type Surface } from './surface.ts'

export const steps = [0, 1, 2, 3, 4, 5, 6, 7, 8] as const
export const disturbances = [
  'the browser is killed',
  'the background is ended',
  'the extension is loaded anew',
  'the page goes to another address',
  'the disk is full',
  'the book is silent',
] as const
export type Disturbance = (typeof disturbances)[number]

/** What is done, and taken back afterwards where it can be. */
interface Deed {
  act: () => Promise<void>
  back?: () => Promise<void>
}

interface Entry {
  id: string
  number: number
  complete: boolean
  lines: { control: string; intended: string; readBack: string; outcome: string }[]
}

/** Every entry of the book, read out of its own database. */
const allEntries = `new Promise((resolve) => {
  indexedDB.open('gapsum').onsuccess = ({ target: { result } }) => {
    if (!result.objectStoreNames.contains('entries')) return resolve([])
    const all = result.transaction('entries').objectStore('entries').getAll()
    all.onsuccess = () => resolve(all.result.filter(({ lines }) => lines).map(
      ({ id, number, complete, lines }) => ({ id, number, complete, lines })))
    result.close()
  }
})`

/** From now on the browser refuses the background every record, until `freed` is called. */
const full = `{
  const { put, add } = IDBObjectStore.prototype
  IDBObjectStore.prototype.put = IDBObjectStore.prototype.add = () => {
    throw new DOMException('The disk is full.', 'QuotaExceededError')
  }
  globalThis.freed = () => void Object.assign(IDBObjectStore.prototype, { put, add })
}`

const pressed = /^Fill \d controls$/
const ended = /Nothing was submitted|Nothing was typed/

export class CutShort {
  readonly attacked = new Attacked()
  #session!: Session
  #known = 0

  async start(): Promise<void> {
    await this.attacked.start(async () => (this.#session = await launch()))
    this.#known = (await this.#entries()).length
  }

  close(): Promise<void> {
    return this.attacked.close()
  }

  /** A page of the extension without a script of its own. */
  #still(): Promise<Page> {
    return this.#session.open(`${this.#session.origin}/licences.txt`)
  }

  async #entries(): Promise<Entry[]> {
    const page = await this.#still()
    const all = (await page.evaluate(allEntries)) as Entry[]
    await page.close()
    return all
  }

  async #deed(how: Disturbance, page: Page): Promise<Deed> {
    const session = this.#session
    switch (how) {
      case 'the browser is killed':
        return { act: () => session.restart() }
      case 'the background is ended':
        return {
          act: async () => {
            for (const worker of await session.extension.workers()) await worker.close()
          },
        }
      case 'the extension is loaded anew':
        return {
          act: () => session.loadAnew(),
        }
      case 'the page goes to another address':
        return { act: async () => void (await page.goto(this.attacked.pages.at('plain', '&after=leaving'))) }
      case 'the disk is full': {
        const [worker] = await session.extension.workers()
        if (!worker) throw new Error('The background does not run.')
        return {
          act: () => worker.evaluate(full) as Promise<void>,
          back: () => worker.evaluate('freed()') as Promise<void>,
        }
      }
      case 'the book is silent': {
        const { page: book } = await session.openPage('/book.html')
        await page.bringToFront()
        return {
          act: async () => void (await hold(book)),
          back: async () => {
            await book.evaluate('letGo()')
            await book.close()
          },
        }
      }
    }
  }

  /** Disturbs one fill. Gives a sentence for each thing that is said and is not so. */
  async run(how: Disturbance, step: number): Promise<string[]> {
    const { pages } = this.attacked
    const leaves = how === 'the page goes to another address'
    const kills = how === 'the browser is killed'
    const reloads = how === 'the extension is loaded anew'
    const page = await this.attacked.visit('steps', `&at=${step}`)
    let ui = await this.attacked.plan(page)
    const { act, back } = await this.#deed(how, page)
    let held: Held | undefined
    const inside = step > 0 && step < 8
    let reached: Promise<void> | undefined
    if (inside)
      reached = new Promise((resolve, reject) => {
        pages.onStep(async (text) => {
          if (kills) held = JSON.parse(text) as Held
          if (!leaves) await act().catch(reject)
          resolve()
          return leaves ? pages.at('plain', '&after=leaving') : ''
        })
      })
    const wrong: string[] = []
    if (step === 0) await act()
    const there = step > 0 || !(kills || leaves || reloads)
    if (there) {
      await ui.click('button', pressed)
      await reached
      if (step === 8) {
        await ui.wait(ended, 60_000)
        if (kills) held = await heldBy(page)
        await act()
      }
    }
    const stays = !kills && !leaves
    if (stays && there && !reloads) {
      await ui.wait(ended, 90_000)
      if (step === 8) {
        await page.evaluate('attack()')
        await ui.wait(/changed by the page after it was entered/)
        if (how === 'the disk is full' || how === 'the book is silent') await ui.wait(/Note it in the book now/, 20_000)
      }
      if (how === 'the disk is full' || how === 'the book is silent') {
        // Or nothing was disturbed.
        const words = await ui.text()
        const told =
          step === 0
            ? /Nothing was typed/
            : step < 8
              ? /The fill stopped|The book may not hold all of this/
              : /Note it in the book now/
        if (!told.test(words)) wrong.push(`The person is not told: ${words}`)
      }
      held = await heldBy(page)
      if (!/Nothing was typed/.test(await ui.text())) wrong.push(...receiptWrong(await receiptOf(ui), held))
      await back?.()
      if (await ui.has('button', 'Note it in the book now')) {
        await ui.click('button', 'Note it in the book now')
        const noted = await until(async () => ((await ui.has('button', 'Note it in the book now')) ? undefined : true))
        if (!noted) wrong.push(`What the book lacks cannot be noted later: ${(await ui.text()).slice(0, 400)}`)
      }
    } else if (stays && reloads) {
      held = await this.#atRest(page)
      // It says so itself, and what it drew is gone.
      const hosts = () => page.evaluate(() => document.querySelectorAll('gapsum-helper').length)
      if (page.frames().some((frame) => frame.url().endsWith('/dock.html')))
        wrong.push('A dock without its extension stands there.')
      if ((await hosts()) !== 1) wrong.push('Nothing says that the extension has gone.')
      // Whoever goes on opens the plan again.
      ui = await this.attacked.plan(page)
      if ((await hosts()) !== 1) wrong.push('What an earlier copy drew stands beside the plan.')
    }
    if (leaves && step > 0) {
      await page.waitForFunction(`location.search.includes('after=leaving') && window.watch`)
      held = await until(async () => (pages.last() ? (JSON.parse(pages.last()) as Held) : undefined))
      pages.forget()
    }
    held ??= { named: {}, others: [] }
    if (kills) {
      await this.#session.openPage('/book.html')
      await this.#session.open(pages.at('plain'))
    }
    const none = Object.values(held.named).every((text) => text === '')
    // What was in hand when the page went away nobody could read back.
    const may = inside && (!stays || reloads) ? 1 : 0
    let last: string[] = []
    const fits = await until(async () => {
      const all = (await this.#entries()).filter(({ number }) => number > this.#known)
      last = entryWrong(all, held!, may, step === 8 && !stays)
      return last.length === 0 && (none || all.length > 0) ? all : undefined
    }, 15_000)
    if (!fits) wrong.push(...(last.length > 0 ? last : ['The book has no entry.']))
    await this.attacked.leave().catch(() => {})
    this.#known = (await this.#entries()).reduce((most, { number }) => Math.max(most, number), 0)
    return wrong.map((what) => `${how} at step ${step}: ${what}`)
  }

  /** What the page holds once nothing is typed any more. */
  async #atRest(page: Page): Promise<Held> {
    let [before, since] = ['', Date.now()]
    return (await until(async () => {
      const held = await heldBy(page)
      const now = JSON.stringify(held)
      if (now !== before) [before, since] = [now, Date.now()]
      return Date.now() - since > 4000 ? held : undefined
    }, 30_000))!
  }
}

const receiptOf = async (ui: Surface): Promise<Line[]> => linesOf(await ui.rows(), { control: 1, text: 2, readBack: 3 })

const nameOf = (control: string): string =>
  Object.entries(asked).find(([, each]) => each.control === control)?.[0] ?? control

function receiptWrong(lines: readonly Line[], { named }: Held): string[] {
  const wrong = lines.flatMap(({ control, readBack, intended, outcome }) => {
    const holds = named[nameOf(control)] ?? ''
    const read = readBack === 'empty' || readBack === '–' ? '' : readBack
    const entered = outcome.startsWith('entered')
    return read === holds && entered === (holds === intended)
      ? []
      : [`The receipt says “${outcome}” with “${readBack}” of ${control}; the page holds “${holds}”.`]
  })
  return lines.length === Object.keys(asked).length ? wrong : [...wrong, `The receipt has ${lines.length} lines.`]
}

function entryWrong(entries: readonly Entry[], { named }: Held, may: number, whole: boolean): string[] {
  const told = new Map(entries.flatMap(({ lines }) => lines.map((line) => [nameOf(line.control), line])))
  const wrong = [...told].flatMap(([name, { readBack, outcome }]) =>
    readBack === (named[name] ?? '') && (outcome === 'entered') === (readBack === asked[name]?.text)
      ? []
      : [`The book says “${outcome}” with “${readBack}” of ${name}; the page holds “${named[name] ?? ''}”.`],
  )
  const missing = Object.entries(named).filter(([name, text]) => text !== '' && !told.has(name))
  if (missing.length > may) wrong.push(`The book says nothing of ${missing.map(([name]) => name).join(', ')}.`)
  if (whole && !entries.some(({ complete }) => complete)) wrong.push('The book has no whole entry.')
  const fills = new Set(entries.map(({ id }) => id.split('/')[0]))
  if (fills.size > 1) wrong.push(`The book has ${fills.size} fills.`)
  return wrong
}
