/** One page of each kind that means harm, in both browsers; all of them: `npm run test:release`. */
import { afterAll, afterEach, beforeAll, describe, test } from 'vitest'
import { launchFirefox } from './firefox.ts'
import { launch } from './harness.ts'
import { Attacked } from './hostile.ts'
import { cases } from './hostile-cases.ts'

const sampled = (from: number) =>
  Object.entries(cases)
    // A page without measure takes the most of a minute.
    .filter(([kind]) => kind !== 'a page without measure')
    .flatMap(([, those], at) =>
      Object.entries(those)
        .slice(0, 1)
        .filter(() => at % 3 >= from),
    )

describe.each([
  { browser: 'Chromium', start: launch, from: 0 },
  // Firefox runs the same cases more slowly: a third of them.
  { browser: 'Firefox', start: launchFirefox, from: 2 },
])('in $browser', ({ start, from }) => {
  const attacked = new Attacked()
  beforeAll(() => attacked.start(start))
  afterEach(() => attacked.leave())
  afterAll(() => attacked.close())

  // oxlint-disable-next-line vitest/expect-expect -- the expectations stand in the cases
  test.each(sampled(from))('%s', (_, run) => run(attacked))
})
