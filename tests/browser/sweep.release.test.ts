/** No id twice, no field without a name or an edge, no target too small for a glove, in any state of dock and widget; day.test.ts looks at the rest. */
import { expect, test } from 'vitest'
import type { GapsumWidget } from '../../lib/widget/element.ts'
import { besideSite } from './beside-site.ts'
import { confirm, openDemo } from './round.ts'
import { sweep, sweepDock } from './sweep.ts'
import { withWidget } from './widget-pages.ts'

const at = besideSite()

test('in the dock: mapping, each kind of question, proposals, plan, receipt', async () => {
  const page = await at.session.open(at.site.plain)
  const popup = await openDemo(at.session, page)
  await popup.click('button', 'after')
  await popup.click('button', 'Map this page')
  const ui = await at.session.helper(page)
  await ui.wait(/Pick a control/)
  const look = async (state: string) => expect.soft(await sweepDock(page), state).toEqual([])
  await look('mapping')
  for (const [control, kind] of [
    [/CFM at 50 Pa/, 'number'],
    [/Date of test/, 'date'],
    [/Test procedure/, 'list'],
    [/Comments/, 'words'],
    [/Signed test report/, 'file'],
  ] as const) {
    await ui.click('button', control)
    await ui.wait(/What goes into/)
    await look(kind)
    if (kind === 'words') {
      await ui.click('radio', 'Words with figures between them')
      await ui.get('textbox', 'Words, part 1')
      await look('words with figures between them')
      await ui.click('radio', 'Fixed text')
      await ui.get('textbox', 'Text to enter')
      await look('fixed text')
    }
    await ui.click('button', 'All controls')
  }
  await ui.click('button', 'Propose for all')
  await ui.wait(/clearly fit/)
  await look('proposals')
  await ui.click('button', /^Bind these [1-9]/)
  await ui.click('button', 'Show the plan')
  await ui.wait(/Nothing is typed until you confirm/)
  await look('plan')
  await confirm(ui)
  await look('receipt')
  await ui.click('button', 'Copy list')
  await look('copy list')
  await page.close()
})

const states: Record<string, (widget: GapsumWidget) => void> = {
  empty: () => undefined,
  'a cell that is no number': (widget) => {
    widget.value = { points: [{ pressure: 'fifty', flow: '4e', devicePressure: '', range: '' }] }
  },
  ducts: (widget) => {
    widget.value = { subject: 'ducts', points: [{ pressure: '25', flow: '60', devicePressure: '', range: '' }] }
  },
  'all of a house typed': (widget) => {
    widget.value = { volume: '8726', points: [{ pressure: '-50', flow: '433', devicePressure: '', range: '' }] }
  },
}

test.each(['form', 'events', 'themed', 'spanish'] as const)(
  'in the widget of the page %s, in every state',
  async (name) => {
    const page = await at.session.open(at.site.widget[name])
    await page.waitForSelector('gapsum-widget:defined')
    for (const [state, set] of Object.entries(states)) {
      await withWidget(page, set as never)
      await withWidget(page, async ({ shadowRoot }) => {
        for (let turn = 0; turn < 3; turn++) {
          for (const one of shadowRoot!.querySelectorAll<HTMLElement>(
            'details:not([open]) > summary, .fg-row button[aria-expanded=false]',
          ))
            one.click()
          await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
        }
      })
      expect.soft(await sweep(page, 'gapsum-widget'), state).toEqual([])
    }
    await page.close()
  },
)
