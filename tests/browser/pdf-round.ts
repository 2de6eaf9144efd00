/**
 * A PDF form from the file to the entry, as a person does it: opened in the extension's page, mapped by proposals and by
 * hand, filled from the demo job, saved, and found in the book. What the saved file holds is asked of two readers that
 * share nothing with this project.
 */
import type { Page } from 'puppeteer-core'
import { faults, valuesIn, wordsIn } from '../pdf/outside.ts'
import type { Driver, Surface } from './harness.ts'
import { confirm, drawn, openDemo, type Line } from './round.ts'

/** Lets a file fall on the page, as from a folder. */
export async function drop(page: Page, name: string, bytes: Uint8Array): Promise<void> {
  await page.waitForSelector('main')
  await page.evaluate(
    (called, text) => {
      const held = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0))
      const carried = new DataTransfer()
      carried.items.add(new File([held], called, { type: 'application/pdf' }))
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }))
    },
    name,
    Buffer.from(bytes).toString('base64'),
  )
}

/** Lets a form fall on the page and waits for its fields. */
export async function openForm(page: Page, name: string, bytes: Uint8Array): Promise<void> {
  await drop(page, name, bytes)
  await page.waitForSelector('.sheet :is(input, select, textarea)', { timeout: 30_000 })
}

/** Presses “Save the filled form”; the name and bytes of the file, taken before the browser keeps it. */
export async function savedForm(page: Page): Promise<{ name: string; bytes: Uint8Array }> {
  const { name, text } = await page.evaluate(async () => {
    const { promise, resolve } = Promise.withResolvers<{ blob: Blob; name: string }>()
    const before = URL.createObjectURL.bind(URL)
    let made: Blob | undefined
    URL.createObjectURL = (blob: Blob) => before((made = blob))
    const press = HTMLAnchorElement.prototype.click
    HTMLAnchorElement.prototype.click = function () {
      if (made) resolve({ blob: made, name: this.download })
    }
    const button = [...document.querySelectorAll('button')].find(
      ({ textContent }) => textContent === 'Save the filled form',
    )
    button?.click()
    const { blob, name: called } = await promise
    URL.createObjectURL = before
    HTMLAnchorElement.prototype.click = press
    const bytes = new Uint8Array(await blob.arrayBuffer())
    return { name: called, text: [...bytes].map((byte) => String.fromCharCode(byte)).join('') }
  })
  return { name, bytes: Uint8Array.from(text, (letter) => letter.charCodeAt(0)) }
}

/** What the demo job gives the plain form, by field; the figures are those of answers.ts. */
export const wanted: Record<string, string> = {
  Text1: '14 Tannery Row',
  Text2: 'Marrowby',
  Text3: 'MB-2025-1183',
  Text4: '15810',
  Text5: '1860',
  Text7: '754',
  Text8: '2.86',
  Text10: 'Ines Halvorsen',
  Text11: 'Bellwether Lane Testing',
  Text12: 'T-0442',
}

/** Maps the open form: what clearly fits at once, then the remarks by hand. Goes on to the plan. */
export async function mapForm(session: Driver, page: Page): Promise<Surface> {
  const popup = await openDemo(session, page)
  await popup.click('button', 'after')
  await popup.click('button', 'Map this page')
  const ui = await session.helper(page)
  await ui.wait(/Pick a control/)
  await ui.click('button', 'Propose for all')
  await ui.click('button', /^Bind th(is|ese)/)
  await ui.wait(/Pick a control/)
  await ui.click('button', /Remarks /)
  await ui.wait(/What goes into “Remarks”/)
  await ui.click('radio', 'Fixed text')
  await ui.type('textbox', 'Text to enter', 'Attic hatch sealed.')
  await ui.click('button', 'Bind, then next')
  if (await ui.has('button', 'All controls')) await ui.click('button', 'All controls')
  await ui.wait(/kept/)
  await ui.click('button', 'Show the plan')
  await ui.wait(/Nothing is typed until you confirm/)
  await ui.ask(drawn)
  return ui
}

/** What is not as it should be in a saved form, by qpdf, by poppler, and against the receipt. */
export function problemsOf(bytes: Uint8Array, receipt: readonly Line[], labels: Record<string, string>): string[] {
  const values = valuesIn(bytes)
  const words = wordsIn(bytes)
  const problems: string[] = []
  const broken = faults(bytes)
  if (broken) problems.push(broken)
  for (const [field, text] of Object.entries({ ...wanted, Text9: 'Attic hatch sealed.' })) {
    if (values.get(field) !== text) problems.push(`${field} holds ${values.get(field) ?? 'nothing'}, not ${text}.`)
    if (!words.includes(text)) problems.push(`${text} of ${field} is not drawn.`)
  }
  for (const { control, intended, readBack, outcome } of receipt) {
    if (!/^(entered|already there)$/.test(outcome) || readBack !== intended)
      problems.push(`${control}: intended ${intended}, read back ${readBack}, ${outcome}.`)
    const field = Object.keys(labels).find((name) => labels[name] === control)
    const held = field === undefined ? undefined : values.get(field)
    // A radio holds the name of a state, the receipt its words.
    if (field !== undefined && /^Text|^Drop/.test(field) && held !== intended)
      problems.push(`${control}: the receipt says ${intended}, the file ${held ?? 'nothing'}.`)
  }
  return problems
}

export { confirm }
