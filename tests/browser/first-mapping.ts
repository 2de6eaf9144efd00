/** What the first mapping of a page costs in clicks and keys, counted while it is done in the built extension. */
import type { Page } from 'puppeteer-core'
import type { Places } from '../pages/places/server.ts'
import type { Site } from '../pages/site/server.ts'
import type { Session, Surface } from './harness.ts'
import { mapPage } from './map-page.ts'
import { formOf, openDemo } from './round.ts'

export interface Mapped {
  page: string
  clicks: number
  keys: number
  /** Controls bound in the end, of how many on the page. */
  bound: number
  of: number
}

interface Count {
  clicks: number
  keys: number
}

/** The same surface, with each click, each choice from a list (two clicks) and each key counted. */
function counted(ui: Surface, count: Count): Surface {
  return new Proxy(ui, {
    get(target, key) {
      const value: unknown = Reflect.get(target, key)
      if (typeof value !== 'function') return value
      return (...given: unknown[]) => {
        if (key === 'click') count.clicks++
        if (key === 'choose') count.clicks += 2
        if (key === 'type') {
          // A box is clicked before it is typed into.
          count.clicks++
          count.keys += String(given[2]).length
        }
        return Reflect.apply(value, target, given)
      }
    },
  })
}

/** The same page, with each click on it counted. */
function countedPage(page: Page, count: Count): Page {
  return new Proxy(page, {
    get(target, key) {
      const value: unknown = Reflect.get(target, key, target)
      if (key === 'mouse')
        return {
          click: (x: number, y: number) => {
            count.clicks++
            return target.mouse.click(x, y)
          },
        }
      return typeof value === 'function' ? value.bind(target) : value
    },
  })
}

async function boundIn(ui: Surface): Promise<Pick<Mapped, 'bound' | 'of'>> {
  const [, bound, of] = /(\d+) of (\d+) controls bound/.exec(await ui.text()) ?? []
  return { bound: Number(bound), of: Number(of) }
}

/** From the toolbar to everything bound: the button in the toolbar and “Map this page” are the first two clicks. */
async function mapping(session: Session, url: string, count: Count): Promise<[page: Page, ui: Surface]> {
  const page = await session.open(url)
  const popup = await openDemo(session, page)
  await popup.click('button', 'Map this page')
  count.clicks = 2
  count.keys = 0
  return [page, counted(await session.helper(page), count)]
}

/** What is proposed, after one answer for the whole page where it does not say of which test it is. */
async function takeProposals(ui: Surface): Promise<void> {
  await ui.wait(/Pick a control/)
  await ui.click('button', 'Propose for all')
  await ui.wait(/clearly fits?\./)
  if (/does not say which test/.test(await ui.text())) await ui.click('button', 'after')
  await ui.click('button', /^Bind th(is|ese)/)
  await ui.wait(/Pick a control/)
  await ui.wait(/kept/)
}

/** The proposals of each of three pages, and everything that the forms of the two rounds ask for. */
export async function firstMappings(session: Session, places: Places, site: Site): Promise<Mapped[]> {
  const all: Mapped[] = []
  for (const path of ['tables.html', 'legends.html', 'agency.html']) {
    const count: Count = { clicks: 0, keys: 0 }
    const [page, ui] = await mapping(session, `${places.origin}/${path}`, count)
    await takeProposals(ui)
    all.push({ page: path, ...count, ...(await boundIn(ui)) })
    await page.close()
  }
  for (const id of ['plain', 'react'] as const) {
    const count: Count = { clicks: 0, keys: 0 }
    const form = formOf(site, id)
    const [page, ui] = await mapping(session, form.url, count)
    let bound = { bound: 0, of: 0 }
    await mapPage(countedPage(page, count), ui, form, async () => {
      bound = await boundIn(ui)
    })
    all.push({ page: form.title, ...count, ...bound })
    await page.close()
  }
  return all
}
