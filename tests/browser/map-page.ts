/** Mapping a page once, as a person does it: the clear proposals together, the rest by hand. */
import type { Page } from 'puppeteer-core'
import { fieldCalled, type Answer, type ByHand } from './answers.ts'
import type { Field } from '../pages/site/field.ts'
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

/** Opens the question of one control: on the page where its label is alone there, otherwise from the helper's list. */
async function ask(page: Page, ui: Surface, form: Form, { label, kind }: Field, row: RegExp): Promise<void> {
  const alike = form.sections.flatMap(({ fields }) => fields).filter((one) => one.label === label)
  if (alike.length === 1 && kind !== 'radio') await pickOnPage(page, label)
  else await ui.click('button', row)
  await ui.wait(new RegExp(`What goes into “${escaped(label)}”`))
}

async function answer(ui: Surface, byHand: ByHand): Promise<void> {
  switch (byHand.pick) {
    case 'option':
      await ui.choose(new RegExp(`${escaped(byHand.value)}|^$`), byHand.option)
      break
    case 'item':
      await ui.type('searchbox', 'Find a figure or job field', `${byHand.group} ${byHand.item}`)
      await ui.click('radio', new RegExp(`^${escaped(byHand.item)}(?![\\w/])`))
      break
    case 'text':
      await ui.click('radio', 'Fixed text')
      if (await ui.has('textbox', 'Text to enter')) await ui.type('textbox', 'Text to enter', byHand.text)
      else await ui.choose('Text to enter', byHand.text)
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

async function bindByHand(page: Page, ui: Surface, form: Form, { field: name, byHand }: Answer): Promise<void> {
  if (byHand === undefined) return
  const field = fieldCalled(form.sections, name)
  // The helper lists the controls in the page's order.
  const place = form.sections.flatMap(({ fields }) => fields).indexOf(field) + 1
  const row = new RegExp(`^${place} ?${escaped(field.label)} `)
  const { name: said } = await ui.get('button', row)
  // A proposal that says the same already needs no hand; one that says something else is put right.
  if (byHand.pick === 'item' && said.endsWith(`${byHand.group}: ${byHand.item}`)) return
  await ask(page, ui, form, field, row)
  await answer(ui, byHand)
  await ui.click('button', 'Bind, then next')
  if (await ui.has('button', 'All controls')) await ui.click('button', 'All controls')
  await ui.wait(/Pick a control/)
}

/** Binds every control that has an answer, then closes the helper. `look` is called while the finished list is shown. */
export async function mapPage(page: Page, ui: Surface, form: Form, look?: () => Promise<void>): Promise<void> {
  await ui.wait(/Pick a control/)
  await ui.click('button', 'Propose for all')
  await ui.click('button', /^Bind th(is|ese)/)
  await ui.wait(/Pick a control/)
  for (const one of form.answers) await bindByHand(page, ui, form, one)
  await ui.wait(new RegExp(`^${form.answers.length} of \\d+ controls bound`, 'm'))
  await ui.wait(/kept/)
  await look?.()
  await ui.click('button', 'Close')
  await ui.gone()
}
