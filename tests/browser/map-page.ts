/** Mapping a page once, as a person does it: the clear proposals together, the rest by hand. */
import type { Page } from 'puppeteer-core'
import { labelled, type Answer, type ByHand } from './answers.ts'
import type { Surface } from './harness.ts'
import type { Form } from './round.ts'

const escaped = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`)

/** Clicks a control on the page itself, where the helper picks it up instead. */
async function pickOnPage(page: Page, label: string): Promise<void> {
  const at = await page.evaluate((text) => {
    const found = [...document.querySelectorAll('label')].find((one) => one.textContent.trim() === text)
    const control = found?.control
    control?.scrollIntoView({ block: 'center', behavior: 'instant' })
    const box = control?.getBoundingClientRect()
    return box && { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  }, label)
  if (!at) throw new Error(`The page has no control labelled ${label}.`)
  await page.mouse.click(at.x, at.y)
}

/** Opens the question of the one control of that label that is not bound yet. */
async function ask(page: Page, ui: Surface, label: string): Promise<void> {
  const row = new RegExp(`^\\d+ ?${escaped(label)} ?not bound$`)
  const open = await ui.all('button', row)
  // A label that stands under one legend only can be picked on the page.
  if (open.length === 1 && !label.startsWith('Test')) await pickOnPage(page, label)
  else await ui.click('button', row)
  await ui.wait(new RegExp(`What goes into “${escaped(label)}”`))
}

async function answer(ui: Surface, byHand: ByHand): Promise<void> {
  switch (byHand.pick) {
    case 'item':
      await ui.type('searchbox', 'Find a figure or job field', `${byHand.group} ${byHand.item}`)
      await ui.click('radio', new RegExp(`^${escaped(byHand.item)}(?![\\w/])`))
      break
    case 'text':
      await ui.click('radio', 'Fixed text')
      await ui.type('textbox', 'Text to enter', byHand.text)
      break
    case 'words':
      await ui.click('radio', 'Words with figures between them')
      for (const [index, part] of byHand.parts.entries()) {
        if ('item' in part) {
          await ui.choose('Add a figure', part.item, part.group)
          continue
        }
        if (index > 0) await ui.click('button', 'Add words')
        await ui.type('textbox', `Words, part ${index + 1}`, part.text)
      }
      break
  }
}

async function bindByHand(page: Page, ui: Surface, form: Form, { field, byHand }: Answer): Promise<void> {
  if (byHand === undefined) return
  await ask(page, ui, labelled(form.sections, field).control)
  await answer(ui, byHand)
  await ui.click('button', 'Bind, then next')
  await ui.click('button', 'All controls')
  await ui.wait(/Pick a control/)
}

/** Binds every control that has an answer, then closes the helper. `shot` is called while one control is asked about. */
export async function mapPage(page: Page, ui: Surface, form: Form, shot: () => Promise<void>): Promise<void> {
  await ui.wait(/Pick a control/)
  await ui.click('button', 'Propose for all')
  await ui.click('button', /^Bind th(is|ese)/)
  await ui.wait(/Pick a control/)
  const byHand = form.answers.filter((one) => one.byHand !== undefined)
  for (const [index, one] of byHand.entries()) {
    if (index === 1) await shot()
    await bindByHand(page, ui, form, one)
  }
  await ui.wait(new RegExp(`^${form.answers.length} of \\d+ controls bound`, 'm'))
  await ui.wait(/kept/)
  await ui.click('button', 'Close')
  await ui.gone()
}
