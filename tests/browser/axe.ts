/** What the accessibility rules of axe-core, a library kept outside this project, find on a page as it stands. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'puppeteer-core'
import { dockOf } from './door.ts'

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** Every rule of WCAG 2.0, 2.1 and 2.2 at A and AA, and what the library calls best practice. */
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** Of a part inside somebody else's page: what a whole page must have is the page's own business. */
const partOfPage = {
  'landmark-one-main': { enabled: false },
  'page-has-heading-one': { enabled: false },
  region: { enabled: false },
}

interface Answer {
  violations: { id: string; help: string; nodes: { target: unknown; html: string; failureSummary?: string }[] }[]
  passes: unknown[]
}

const run = (include: string | undefined, rules: object): string => `(async () => {
  if (!globalThis.axe) { ${source} }
  const found = await axe.run(${include === undefined ? 'document' : JSON.stringify({ include: [[include]] })}, {
    runOnly: { type: 'tag', values: ${JSON.stringify(tags)} },
    rules: ${JSON.stringify(rules)},
    resultTypes: ['violations'],
  })
  return JSON.stringify({ violations: found.violations, passes: found.passes.map(({ id }) => id) })
})()`

function sentences(text: string): string[] {
  const { violations: broken, passes } = JSON.parse(text) as Answer
  // A run that looked at nothing finds nothing either.
  if (passes.length < 10) throw new Error(`Only ${passes.length} rules found anything to look at.`)
  return broken.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target, html, failureSummary = '' }) =>
      [`${id}: ${help}`, JSON.stringify(target), html.slice(0, 300), failureSummary.replaceAll(/\s+/g, ' ')].join(
        '\n  ',
      ),
    ),
  )
}

const modes = ['light', 'dark'] as const

async function inBoth(page: Page, look: () => Promise<string>): Promise<string[]> {
  const found: string[] = []
  for (const value of modes) {
    await page.emulateMediaFeatures([
      { name: 'prefers-color-scheme', value },
      { name: 'prefers-reduced-motion', value: 'reduce' },
    ])
    found.push(...sentences(await look()).map((sentence) => `${value}: ${sentence}`))
  }
  await page.emulateMediaFeatures([])
  return found
}

/** What is wrong with a whole page, or with the part of it that a selector names; in light and in dark. */
export function violations(page: Page, include?: string): Promise<string[]> {
  return inBoth(page, () => page.evaluate(run(include, include === undefined ? {} : partOfPage)) as Promise<string>)
}

/** What is wrong with the dock, which stands in a frame of its own in somebody else's page. */
export async function helperViolations(page: Page): Promise<string[]> {
  const session = dockOf(page)
  const found: string[] = []
  for (const value of modes) {
    const features = [
      { name: 'prefers-color-scheme', value },
      { name: 'prefers-reduced-motion', value: 'reduce' },
    ]
    await session.send('Emulation.setEmulatedMedia', { features })
    const { result, exceptionDetails } = await session.send('Runtime.evaluate', {
      expression: run(undefined, partOfPage),
      awaitPromise: true,
      returnByValue: true,
    })
    if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text)
    found.push(...sentences(result.value as string).map((sentence) => `${value}: ${sentence}`))
  }
  await session.send('Emulation.setEmulatedMedia', { features: [] })
  return found
}
