/** The calculator beside the page, the plot, own figures, the paragraph, and the form to practise on. */
import { expect, test } from 'vitest'
import { eightPoints } from '../report/report-fixtures.ts'
import { besideSite } from './beside-site.ts'
import { helper, type Surface, whole } from './harness.ts'
import { pastePoints } from './paste-points.ts'
import { confirm, openDemo } from './round.ts'
import { until } from './surface.ts'

const at = besideSite()

/** What stands in a cell of the readings. */
const cell = (view: Surface, row: number, column: string): Promise<string> =>
  view.page.$eval(`[data-row="${row}"][data-column="${column}"]`, (box) => (box as HTMLInputElement).value)

/** Types into a cell of the readings of each window at one moment, as hands at several windows would. */
const typeAtOnce = (...typed: [view: Surface, row: number, column: string, text: string][]): Promise<unknown> => {
  // Sent one after the other, the second would come when the first is kept and shown there already.
  const moment = Date.now() + 250
  return Promise.all(
    typed.map(([view, row, column, text]) =>
      view.page.$eval(
        `[data-row="${row}"][data-column="${column}"]`,
        async (box, value, when) => {
          await new Promise((resolve) => setTimeout(resolve, when - Date.now()))
          const input = box as HTMLInputElement
          input.value = value
          input.dispatchEvent(new Event('input', { bubbles: true }))
        },
        text,
        moment,
      ),
    ),
  )
}

const eventually = (view: Surface, row: number, column: string, text: string): Promise<true | undefined> =>
  until(async () => ((await cell(view, row, column)) === text ? true : undefined), 5000)

async function openSection(view: Surface, id: string): Promise<void> {
  await view.page.waitForSelector(`#${id} > summary`)
  await view.page.$eval(`#${id}`, (section) => {
    if (!(section as HTMLDetailsElement).open) section.querySelector('summary')!.click()
  })
}

/** The demo job's test after the work, as a regression of eight points: pasted, as a person would. */
async function openRegression(): Promise<Surface> {
  const view = await at.session.openPage('/sidepanel.html')
  await view.get('button', 'Open book')
  if (await view.has('button', 'Open the demo job')) await view.click('button', 'Open the demo job')
  await view.wait(/14 Tannery Row/)
  await view.click('button', 'after')
  await openSection(view, 'setup')
  await view.choose('Procedure', /^ASTM E779/)
  const lines = eightPoints().test.sheet.points.map(({ pressure, flow, range }) => [pressure, flow, range].join('\t'))
  await pastePoints(view.page, lines)
  await view.wait(/8 points/)
  return view
}

test('the closed set-up says that something inside is to be corrected', async () => {
  const view = await openRegression()
  const closed = /Something inside is to be corrected/
  await view.type('textbox', /^Indoors/, 'warm')
  expect(await view.text()).not.toMatch(closed)
  await view.fold('setup')
  await view.wait(closed)
  await openSection(view, 'setup')
  await view.type('textbox', /^Indoors/, '68')
  await view.fold('setup')
  expect(await view.wait(/ASTM E779, .*68/)).not.toMatch(closed)
  await view.page.close()
})

test('the closed building says so too', async () => {
  const view = await openRegression()
  const closed = /Something inside is to be corrected/
  await view.click('button', /^Job: /)
  await openSection(view, 'building')
  await view.type('textbox', /^Volume/, 'large')
  expect(await view.text()).not.toMatch(closed)
  await view.fold('building')
  await view.wait(closed)
  await openSection(view, 'building')
  await view.type('textbox', /^Volume/, '15810')
  await view.fold('building')
  await view.wait(/ACH50/)
  expect(await view.text()).not.toMatch(closed)
  await view.page.close()
})

test('the popup puts itself beside the page, where it stays', async () => {
  const page = await at.session.open(at.site.plain)
  const popup = await openDemo(at.session, page)
  const opened = at.session.browser.waitForTarget((target) => target.url().endsWith('/sidepanel.html'), {
    timeout: 15_000,
  })
  await popup.click('button', 'Keep beside the page')
  const beside = await whole(await (await opened).asPage(), 'The sidebar')
  await beside.wait(/14 Tannery Row/)
  expect(await beside.has('button', 'Keep beside the page')).toBe(false)
  // What stood there before the scripts had come is gone.
  expect(await beside.page.$$eval('.calc', (found) => found.length)).toBe(1)

  // A page on which the button was never pressed is closed to it: it says what to press, and then works there.
  const other = await at.session.open(at.site.react)
  await beside.wait(/press the Gapsum button in the toolbar once/)
  await beside.click('button', 'Map this page')
  await beside.wait(/does not let the helper into this page yet: press the Gapsum button/)
  const popupThere = await at.session.openPopup(other)
  await popupThere.wait(/14 Tannery Row/)
  await popupThere.page.close()
  await beside.click('button', 'Map this page')
  await (await helper(other)).wait(/Pick a control/)
  await other.close()
  await page.close()
})

test('the helper has the look that was chosen in the book, whatever the browser prefers and the page styles', async () => {
  const page = await at.session.open(at.site.plain)
  await page.evaluate(() => {
    const styles = new CSSStyleSheet()
    styles.replaceSync(
      'gapsum-helper { --paper: red !important; --ink: red !important; color-scheme: dark !important }',
    )
    document.adoptedStyleSheets = [styles]
  })
  const ground = `function () {
    const { backgroundColor, color } = getComputedStyle(this.querySelector('.dock'))
    return backgroundColor + ' ' + color
  }`
  // Paper and ink of lib/view/parts/tokens.css.
  for (const [name, theme, colours] of [
    ['dark colours', 'dark', 'rgb(21, 19, 23) rgb(239, 235, 241)'],
    ['high contrast', 'contrast', 'rgb(255, 255, 255) rgb(0, 0, 0)'],
    ['as the system has it', 'system', 'rgb(255, 255, 255) rgb(27, 25, 30)'],
  ] as const) {
    const book = await at.session.openPage('/book.html#settings')
    await book.click('radio', name)
    await book.page.waitForFunction((kept) => (document.documentElement.dataset.theme ?? 'system') === kept, {}, theme)
    await book.page.close()
    const popup = await openDemo(at.session, page)
    await popup.click('button', 'Map this page')
    const ui = await helper(page)
    await ui.wait(/Pick a control/)
    let seen = ''
    await until(async () => {
      seen = await ui.ask<string>(ground)
      return seen === colours ? true : undefined
    }, 3000)
    expect([name, seen]).toEqual([name, colours])
  }
  await page.close()
})

test('what is typed in two windows at once is all kept, and what both typed in one cell is told', async () => {
  const [one, other] = [await at.session.openPage('/sidepanel.html'), await at.session.openPage('/sidepanel.html')]
  for (const view of [one, other]) {
    await view.wait(/14 Tannery Row/)
    await view.page.bringToFront()
    await view.click('button', 'before')
  }
  for (let round = 0; round < 5; round++) {
    const [pressure, flow] = [`-5${round}.1`, `150${round}`]
    await typeAtOnce([one, 0, 'pressure', pressure], [other, 0, 'flow', flow])
    for (const view of [one, other]) {
      expect(await eventually(view, 0, 'pressure', pressure), `pressure, turn ${round}`).toBe(true)
      expect(await eventually(view, 0, 'flow', flow), `flow, turn ${round}`).toBe(true)
    }
  }
  await typeAtOnce([one, 0, 'flow', '1601'], [other, 0, 'flow', '1602'])
  const told = await until(async () => {
    for (const view of [one, other]) {
      const text = await view.text()
      if (/typed “160[12]” at the same time/.test(text)) return text
    }
    return undefined
  }, 5000)
  expect(told).toMatch(/before: Point 1, flow: “160[12]” stands/)
  await one.page.close()
  await other.page.close()
})

test('a point is left out of the plot with a reason, and the figures, the checks and the report say so', async () => {
  const view = await openRegression()
  await openSection(view, 'plot')
  await view.get('group', /Leakage flow against pressure.*8 points/)
  const before = await view.text()
  await view.click('button', /^Point 3: 49\.9 Pa, \d+ cfm, \d\.\d % above the line$/)
  // Another key away: the arrows go on from there.
  await view.key('ArrowRight')
  await view.get('textbox', 'Why point 4 is left out, for the report')
  await view.key('ArrowLeft')
  await view.type('textbox', 'Why point 3 is left out, for the report', 'a door slammed')
  await view.click('button', 'Leave point 3 out')
  await view.wait(/fit of 7 points/)
  expect(before).toMatch(/fit of 8 points/)
  await view.wait(/Left out: a door slammed/)
  await openSection(view, 'checks')
  expect(await view.text()).toMatch(/Left out of every figure: point 3 \(“a door slammed”\)/)

  await view.page.reload()
  await view.wait(/fit of 7 points/)
  const book = await at.session.openPage('/book.html#report?job=demo-job&test=demo-after')
  await book.wait(/× Point 3 is left out of the figures: a door slammed/)
  expect(await book.has('image', /before.*after.*down/i)).toBe(true)
  await book.page.close()

  await view.page.bringToFront()
  await view.click('button', 'Take point 3 back')
  await view.wait(/fit of 8 points/)
  await view.page.close()
})

test('pinned figures come first, in their order and rounding, also after a restart of the window', async () => {
  const view = await openRegression()
  await openSection(view, 'figures')
  await view.click('button', 'Pin and order figures')
  await view.click('checkbox', /^ELA/)
  await view.click('checkbox', 'ACH50')
  await view.choose('Decimals of ACH50', '0.000')
  await view.click('button', 'Move ACH50 up')
  await view.click('button', 'Done')
  await view.page.reload()
  await view.wait(/own figures/i)
  const rows = await view.rows()
  const first = rows.findIndex(([name]) => /^own figures$/i.test(name ?? ''))
  expect(rows.slice(first + 1, first + 3).map(([name, value]) => [name?.trim().split('\n')[0], value])).toEqual([
    ['ACH50', expect.stringMatching(/^\d\.\d{3}$/)],
    [expect.stringMatching(/^ELA/), expect.any(String)],
  ])
  expect(await view.has('button', /^Copy ACH50, \d\.\d{3}$/)).toBe(true)
  await view.page.close()
})

test('the paragraph is copied as plain and as rich text, and its wording stays changed', async () => {
  const view = await openRegression()
  // Any page may be read from in this browser, so that the test sees what a mail program would be given.
  const browser = await at.session.browser.target().createCDPSession()
  for (const name of ['clipboard-read', 'clipboard-write']) {
    await browser.send('Browser.setPermission', { permission: { name }, setting: 'granted' })
  }
  await openSection(view, 'paragraph')
  await view.click('button', 'Change the wording')
  await view.type('textbox', 'Words, part 1', 'Airtightness of ')
  await view.click('button', 'Copy the paragraph')
  await view.wait(/Copied/)
  const copied = await view.page.evaluate(async () => {
    const [item] = await navigator.clipboard.read()
    const read = async (type: string) => (await item!.getType(type)).text()
    return { plain: await read('text/plain'), html: await read('text/html') }
  })
  expect(copied.plain).toMatch(
    /^Airtightness of 14 Tannery Row, Marrowby, Larch County on 2026-02-11: 2\.85.* ACH50\. Meets the limit, 3\.0 ACH50\..*[Cc]heck the edition/,
  )
  expect(copied.html).toMatch(/<b>2\.85.* ACH50<\/b>/)
  await view.page.reload()
  await view.wait(/Airtightness of/)
  await view.page.close()
})

test('the form to practise on is mapped and filled as any other, and sends nothing', async () => {
  const page = await at.session.open(`chrome-extension://${at.session.extension.id}/practice.html`)
  const popup = await openDemo(at.session, page)
  await popup.click('button', 'after')
  await popup.click('button', 'Map this page')
  const mapping = await helper(page)
  await mapping.click('button', 'Propose for all')
  await mapping.wait(/clearly fit/)
  await mapping.click('button', /^Bind these [1-9]\d*$/)
  await mapping.click('button', 'Show the plan')
  await mapping.wait(/Nothing is typed until you confirm/)
  const lines = await confirm(mapping)
  expect(lines.length).toBeGreaterThan(4)
  expect(lines.every(({ outcome }) => /entered/.test(outcome))).toBe(true)
  const held = await page.$eval('[name="street"]', (box) => (box as HTMLInputElement).value)
  expect(held).toContain('14 Tannery Row')
  expect(await page.$eval('[name="certify"]', (box) => (box as HTMLInputElement).checked)).toBe(false)
  const book = await at.session.openPage('/book.html')
  await book.wait(/Form LC-7, practice sheet|Practice form/)
  await book.page.close()
  await page.close()
})
