/**
 * Shows the product at work. With a display: a browser with the extension, the demo job and a form, for you to go on
 * with. Without one: the whole round, headless, compared with what the pages themselves hold.
 */
import { execFileSync } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { startSite, type Site } from '../pages/site/server.ts'
import { launch, type Session } from './harness.ts'
import { forms, openDemo, round, type RoundResult } from './round.ts'
import { example, withWidget } from './widget-pages.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const pictures = fileURLToPath(new URL('../../.output/pictures/', import.meta.url))

const seen =
  ['darwin', 'win32'].includes(process.platform) ||
  Boolean(process.env['DISPLAY']) ||
  Boolean(process.env['WAYLAND_DISPLAY'])

async function show(site: Site): Promise<void> {
  const session = await launch({ headless: false })
  const ended = new Promise((resolve) => {
    session.browser.once('disconnected', resolve)
  })
  const [first] = await session.browser.pages()
  const page = await session.open(site.plain)
  await first?.close()
  await openDemo(session, page)
  console.log('The form of an invented county office is open, and the demo job is in the popup.')
  console.log('Press Map this page and propose for all, then Fill this page; close the browser to end.')
  console.log(`Pages with the calculator in them are linked from ${site.origin}.`)
  await ended
  await session.close()
}

function print(result: RoundResult): void {
  console.log(`\n${result.title}\n\nFigures`)
  for (const { test, name, value, unit } of result.figures)
    console.log(`  ${test.padEnd(14)} ${name.padEnd(36)} ${value.padStart(12)} ${unit}`)
  console.log('\nBindings: intended, then what the page’s own state holds')
  for (const line of result.lines)
    console.log(
      `  ${line.right ? 'right' : 'WRONG'}  ${`${line.section}, ${line.control}`.padEnd(52)} ${line.intended.padEnd(26)} ${line.holds}`,
    )
  for (const problem of result.problems) console.log(`  WRONG  ${problem}`)
}

/** The four pages that hold the calculator: what each has computed, and a picture of it. */
async function showHosts(session: Session, site: Site): Promise<void> {
  console.log('\nPages with the calculator in them')
  for (const [name, url] of Object.entries(site.widget)) {
    const page = await session.open(url)
    const held = name === 'frame' ? await page.waitForFrame((one) => one.url().includes('/widget/inner')) : page
    await withWidget(held, (widget, value) => void (widget.value = value), { points: example.points })
    const figures = await withWidget(held, (widget) => Object.keys(widget.report?.figures ?? {}).length)
    await page.screenshot({ path: `${pictures}widget-${name}.png` as const, fullPage: true })
    console.log(`  ${name.padEnd(14)} ${String(figures).padStart(3)} figures  ${url}`)
    await page.close()
  }
}

async function prove(site: Site): Promise<boolean> {
  mkdirSync(pictures, { recursive: true })
  const session = await launch({ scale: 2 })
  try {
    let wrong = 0
    for (const form of forms(site)) {
      const result = await round(session, site, form, { pictures })
      print(result)
      wrong += result.problems.length
    }
    await showHosts(session, site)
    console.log(`\n${wrong === 0 ? 'All right.' : `${wrong} wrong.`} Pictures of each step are in .output/pictures/.`)
    return wrong === 0
  } finally {
    await session.close()
  }
}

execFileSync('npm', ['run', '--silent', 'build'], { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' })
const site = await startSite()
try {
  if (seen) await show(site)
  else if (!(await prove(site))) process.exitCode = 1
} finally {
  await site.close()
}
