/** One page of each kind that means harm, in both browsers; all of them: `npm run test:release`. */
import { afterAll, afterEach, beforeAll, describe, test } from 'vitest'
import { launchFirefox } from './firefox.ts'
import { launch } from './harness.ts'
import { Attacked } from './hostile.ts'
import { sampled } from './hostile-cases.ts'

describe.each([
  { browser: 'Chromium', start: launch },
  { browser: 'Firefox', start: launchFirefox },
] as const)('in $browser', ({ browser, start }) => {
  const attacked = new Attacked()
  beforeAll(() => attacked.start(start))
  afterEach(() => attacked.leave())
  afterAll(() => attacked.close())

  // oxlint-disable-next-line vitest/expect-expect -- the expectations stand in the cases
  test.each(sampled(browser))('%s', (_, run) => run(attacked))
})
