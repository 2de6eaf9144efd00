/**
 * The same pages that mean harm in Firefox, through the toolbar's own button. None of them is Chromium's alone: each
 * case runs here as it is, but for those of hostile.test.ts. HOSTILE=all runs these too, and what a plain run leaves to
 * `npm run soak firefox`.
 */
import { afterAll, afterEach, beforeAll, describe, test } from 'vitest'
import { launchFirefox } from './firefox.ts'
import { Attacked } from './hostile.ts'
import { cases, others } from './hostile-cases.ts'

const long = new Set([
  // Its hundred thousand controls measure the survey, which is the same code in both; Firefox takes 40 s over it.
  'has a hundred thousand controls, and is filled',
  // Waits out every patience of the fill, which knows no browser: 13 s.
  'draws itself anew without end: the fill ends, and the receipt is true',
  // Looks at the same six ways of hiding as the case that hides them during the fill.
  'has hidden them before the plan is opened: none of them is written',
])
const all = process.env['HOSTILE'] === 'all'
const chosen = all
  ? Object.entries(cases).map(([kind, those]) => [kind, Object.entries(those)] as const)
  : others('Firefox').map(([kind, those]) => [kind, those.filter(([title]) => !long.has(title))] as const)

const attacked = new Attacked()

beforeAll(() => attacked.start(launchFirefox))
afterEach(() => attacked.leave())
afterAll(() => attacked.close())

describe.each(chosen)('%s', (_, those) => {
  // oxlint-disable-next-line vitest/expect-expect -- the expectations stand in the cases
  test.each(those)('%s', (__, run) => run(attacked))
})
