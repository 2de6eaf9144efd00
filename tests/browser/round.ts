/**
 * The whole job as a person does it: readings to figures in the popup, the page mapped once, the plan, the fill, the
 * receipt, the entry in the book. What the page holds is asked of the page's own state, not of its controls.
 */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'puppeteer-core'
import { shown, type Field, type Model, type Section } from '../pages/site/field.ts'
import { sections as plainSections } from '../pages/site/part-c/fields.ts'
import type { Site } from '../pages/site/server.ts'
import { sections as reactSections } from '../pages/site/sheet-4/fields.ts'
import { figureAnswers, plainAnswers, reactAnswers, type Answer } from './answers.ts'
import { Surface, type Driver } from './harness.ts'
import { mapPage } from './map-page.ts'
import { stillPicture } from './still-picture.ts'

export interface Form {
  id: 'plain' | 'react'
  title: string
  url: string
  sections: readonly Section[]
  answers: readonly Answer[]
}

export interface Figure {
  test: string
  name: string
  value: string
  unit: string
}

export interface Line {
  section: string
  control: string
  intended: string
  readBack: string
  outcome: string
}

export interface Compared extends Line {
  /** What the page's own state holds, in the words a person sees. */
  holds: string
  right: boolean
}

export interface RoundResult {
  title: string
  figures: Figure[]
  lines: Compared[]
  /** Sentences about everything that is not as it should be. */
  problems: string[]
  page: Page
  /** The receipt, still open. */
  ui: Surface
  /** What the page held before the fill. */
  before: Model
}

export function forms(site: Site): Form[] {
  return [
    {
      id: 'plain',
      title: 'Form LC-7, part C (plain HTML)',
      url: site.plain,
      sections: plainSections('LC7-2026-0187'),
      answers: plainAnswers,
    },
    { id: 'react', title: 'Permit sheet 4 (React)', url: site.react, sections: reactSections, answers: reactAnswers },
  ]
}

export function formOf(site: Site, id: Form['id']): Form {
  const form = forms(site).find((one) => one.id === id)
  if (form === undefined) throw new Error(`There is no form ${id}.`)
  return form
}

/** The page's own model. */
export function modelOf(page: Page): Promise<Model> {
  return page.evaluate(() => (window as unknown as { pageState: () => Model }).pageState())
}

export function submissions(page: Page): Promise<number> {
  return page.evaluate(() => (window as unknown as { submitted: number }).submitted)
}

function fieldOf(form: Form, section: string, control: string): Field | undefined {
  return form.sections.find(({ legend }) => legend === section)?.fields.find(({ label }) => label === control)
}

/** Opens the popup with the demo job in it. */
export async function openDemo(session: Driver, page: Page): Promise<Surface> {
  const popup = await session.openPopup(page)
  await popup.get('button', 'Open book')
  if (await popup.has('button', 'Open the demo job')) await popup.click('button', 'Open the demo job')
  await popup.wait(/14 Tannery Row/)
  return popup
}

/** Every figure of every test, as the popup shows it. */
async function readFigures(popup: Surface): Promise<Figure[]> {
  const figures: Figure[] = []
  for (const test of Object.keys(figureAnswers)) {
    if (!(await popup.has('button', test))) continue
    const [tab] = await popup.all('button', test)
    if (tab && !(await popup.isCurrent(tab))) await popup.clickFound(tab)
    for (const cells of await popup.rows()) {
      const [name = '', value = '', , unit = ''] = cells
      if (cells.length === 6 && name !== 'Figure') figures.push({ test, name, value, unit })
    }
  }
  return figures
}

function compareFigures(figures: readonly Figure[]): string[] {
  const problems: string[] = []
  for (const [test, wanted] of Object.entries(figureAnswers))
    for (const [name, value] of Object.entries(wanted)) {
      const found = figures.find((figure) => figure.test === test && figure.name.trim() === name)
      if (found?.value !== value) problems.push(`${test}: ${name} is ${found?.value ?? 'missing'}, not ${value}.`)
    }
  return problems
}

/** The lines of a plan or receipt, with the section above each. */
export function linesOf(
  rows: readonly string[][],
  columns: { control: number; text: number; readBack: number },
): Line[] {
  const lines: Line[] = []
  let section = ''
  for (const cells of rows) {
    if (cells.length === 1) section = cells[0] ?? ''
    else if (/^\d+$/.test(cells[0] ?? ''))
      lines.push({
        section,
        control: (cells[columns.control] ?? '').split('\n')[0] ?? '',
        intended: cells[columns.text] ?? '',
        readBack: cells[columns.readBack] ?? '',
        outcome: cells[columns.readBack + 1] ?? '',
      })
  }
  return lines
}

/** A receipt compared with the page's own model and with the answers worked outside. */
export function compare(form: Form, lines: readonly Line[], before: Model, after: Model): Compared[] {
  return lines.map((line) => {
    const field = fieldOf(form, line.section, line.control)
    const answer = form.answers.find((one) => one.field === field?.name)
    const holds = field ? shown(field, after) : 'no such control'
    const there = field !== undefined && shown(field, before) === line.intended
    return {
      ...line,
      holds,
      right:
        answer !== undefined &&
        holds === answer.holds &&
        line.intended === answer.holds &&
        line.readBack === answer.holds &&
        (line.outcome === 'entered' || (there && line.outcome === 'already there')),
    }
  })
}

function strays(form: Form, before: Model, after: Model): string[] {
  const meant = new Set(form.answers.map(({ field }) => field))
  return Object.keys(after)
    .filter((name) => !meant.has(name) && before[name] !== after[name])
    .map((name) => `${name} was changed although nothing is bound to it.`)
}

/** From the popup to the plan in the page. */
export async function openPlan(session: Driver, page: Page): Promise<Surface> {
  const popup = await session.openPopup(page)
  await popup.wait(/\d+ (bindings?|of \d+ left)/)
  await popup.click('button', 'Fill this page')
  const ui = await session.helper(page)
  // A plan of many controls stands there before all of them are looked through.
  await ui.wait(/^(?![^]*looked through so far)[^]*Nothing is typed until you confirm/, 60_000)
  await ui.ask(drawn)
  return ui
}

/** A person presses what they have seen: waits until the browser has drawn the dock, where it says so. */
export const drawn = `function () {
  if (!('isVisible' in IntersectionObserverEntry.prototype)) return undefined
  return new Promise((done) => {
    const watch = new IntersectionObserver(
      (entries) => entries.some(({ isVisible }) => isVisible) && (watch.disconnect(), done()),
      { threshold: [0, 0.5, 1], trackVisibility: true, delay: 100 },
    )
    watch.observe(this)
    setTimeout(done, 3000)
  })
}`

/** Confirms the plan and waits for the receipt. */
export async function confirm(ui: Surface): Promise<Line[]> {
  await ui.ask(drawn)
  await ui.click('button', /^(Fill|Put back) \d+ controls?$/)
  await ui.wait(/controls? (entered|put back)/, 60_000)
  return linesOf(await ui.rows(), { control: 1, text: 2, readBack: 3 })
}

/** The lines of an entry as the book page shows them. */
export async function bookLines(session: Driver): Promise<{ book: Surface; lines: Line[]; number: string }> {
  const book = await session.waitForPage('/book.html')
  await book.wait(/Place in the chain/)
  await book.wait(/Chain verified/)
  const rows = await book.rows()
  const number = rows.find((cells) => cells.length === 8 && /^\d+$/.test(cells[0] ?? ''))?.[0] ?? ''
  const below = rows.slice(rows.findIndex((cells) => cells[1] === 'Control') + 1)
  const end = below.findIndex(([first], index) => first !== String(index + 1))
  const lines = below
    .slice(0, end < 0 ? undefined : end)
    .map(([, control = '', , intended = '', readBack = '', outcome = '']) => ({
      section: '',
      control: control.split('\n')[0] ?? '',
      intended,
      readBack,
      outcome,
    }))
  return { book, lines, number }
}

function compareBook(receipt: readonly Line[], book: readonly Line[]): string[] {
  if (book.length !== receipt.length)
    return [`The book’s entry has ${book.length} lines, the receipt ${receipt.length}.`]
  return receipt.flatMap((line, index) => {
    const kept = book[index]
    const same =
      kept?.control === line.control &&
      kept.intended === line.intended &&
      kept.readBack === line.readBack &&
      kept.outcome === line.outcome
    return same ? [] : [`The book’s line ${index + 1}, ${kept?.control ?? 'none'}, is not as on the receipt.`]
  })
}

export interface RoundOptions {
  /** A folder to save a picture of each step into. */
  pictures?: string
}

export async function round(
  session: Driver,
  site: Site,
  form: Form,
  { pictures }: RoundOptions = {},
): Promise<RoundResult> {
  const problems: string[] = []
  const picture = async (of: Page | Surface, step: string): Promise<void> => {
    if (pictures === undefined) return
    const page = of instanceof Surface ? of.page : of
    writeFileSync(join(pictures, `${form.id}-${step}.png`), await stillPicture(page))
  }
  const posts = (): number => site.requests.filter(({ method }) => method !== 'GET').length
  const postsBefore = posts()

  const page = await session.open(form.url)
  const before = await modelOf(page)
  const popup = await openDemo(session, page)
  const figures = await readFigures(popup)
  problems.push(...compareFigures(figures))
  await picture(popup, '1-popup')

  if (await popup.has('button', 'Map this page')) await popup.click('button', 'Map this page')
  const mapping = await session.helper(page)
  await mapPage(page, mapping, form, () => picture(page, '2-mapping'))

  const ui = await openPlan(session, page)
  await picture(page, '3-plan')
  if (JSON.stringify(await modelOf(page)) !== JSON.stringify(before))
    problems.push('The page was changed before the plan was confirmed.')

  const receipt = await confirm(ui)
  await picture(page, '4-receipt')
  const after = await modelOf(page)
  const lines = compare(form, receipt, before, after)
  for (const line of lines)
    if (!line.right)
      problems.push(
        `${line.section}, ${line.control}: intended ${line.intended}, read back ${line.readBack}, ${line.outcome}; the page holds ${line.holds}.`,
      )
  for (const { field } of form.answers)
    if (!lines.some(({ section, control }) => fieldOf(form, section, control)?.name === field))
      problems.push(`${field} is missing on the receipt.`)
  problems.push(...strays(form, before, after))

  await ui.click('button', 'Open book')
  const { book, lines: kept } = await bookLines(session)
  await picture(book, '5-book')
  problems.push(...compareBook(receipt, kept))
  await book.close()
  await page.bringToFront()

  if ((await submissions(page)) > 0 || posts() > postsBefore) problems.push('The form was submitted.')
  return { title: form.title, figures, lines, problems, page, ui, before }
}
