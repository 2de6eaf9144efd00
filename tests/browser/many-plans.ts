/**
 * Plans by the hundred in one page that means harm: the helper is opened once as a person does, and is then shown one
 * plan after the other by the message that the popup sends.
 */
import type { Page } from 'puppeteer-core'
import type { FormMap } from '../../lib/form/schema.ts'
import { launch, type Session, type Surface } from './harness.ts'
import { Attacked } from './hostile.ts'
import { until } from './surface.ts'

/** Every form map of the book, out of its own database. */
const allMaps = `new Promise((resolve) => {
  indexedDB.open('gapsum').onsuccess = ({ target: { result } }) => {
    result.transaction('maps').objectStore('maps').getAll().onsuccess = ({ target }) => resolve(target.result)
  }
})`

export class ManyPlans {
  readonly attacked = new Attacked()
  session!: Session
  page!: Page
  ui!: Surface
  #map!: FormMap
  #tab!: number

  /** Opens the helper on a hostile page. */
  async start(name: string): Promise<void> {
    await this.attacked.start(async () => (this.session = await launch()))
    const still = await this.session.open(`${this.session.origin}/licences.txt`)
    const map = ((await still.evaluate(allMaps)) as FormMap[]).at(-1)
    await still.close()
    if (!map) throw new Error('The book has no form map.')
    this.#map = map
    this.page = await this.attacked.visit(name)
    this.ui = await this.attacked.plan(this.page)
    this.#tab = await this.#worker<number>(
      `chrome.tabs.query({}).then((tabs) => tabs.find(({ url }) => url?.includes('page=${name}')).id)`,
    )
  }

  async #worker<T>(expression: string): Promise<T> {
    const [worker] = await this.session.extension.workers()
    if (!worker) throw new Error('The background does not run.')
    return worker.evaluate(expression) as Promise<T>
  }

  /** The names of the controls that a plan may have texts for, in its order. */
  get controls(): string[] {
    return this.#map.bindings.map(({ control }) => control.name)
  }

  /** Shows a plan with a text for each of the first controls; waits until the dock has it. */
  async show(texts: readonly string[], job: string): Promise<void> {
    const bindings = texts.map((text, at) => ({ ...this.#map.bindings[at]!, source: { from: 'text', text } }))
    const task = {
      type: 'plan',
      material: { job: { id: 'many', name: job }, items: {} },
      map: { ...this.#map, bindings },
    }
    const sent = await until(async () => {
      const answer = await this.#worker<{ shown?: boolean } | undefined>(
        `chrome.tabs.sendMessage(${this.#tab}, ${JSON.stringify(task)}, { frameId: 0 })`,
      )
      return answer?.shown ? true : undefined
    })
    if (!sent) throw new Error('The helper took no plan.')
    const shown = await until(async () => {
      const words = await this.ui.text().catch(() => '')
      return words.includes(job) && /Nothing is typed until you confirm/.test(words) ? true : undefined
    })
    if (!shown) throw new Error(`The dock never showed the plan of ${job}: ${await this.ui.text()}`)
  }

  close(): Promise<void> {
    return this.attacked.close()
  }
}
