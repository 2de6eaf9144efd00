/** Pages that mean harm, through the real action of the built extension: all but those of hostile.test.ts. */
import { afterAll, afterEach, beforeAll, describe, test } from 'vitest'
import { launch } from './harness.ts'
import { Attacked } from './hostile.ts'
import { others } from './hostile-cases.ts'

const attacked = new Attacked()

beforeAll(() => attacked.start(launch))
afterEach(() => attacked.leave())
afterAll(() => attacked.close())

describe.each(others('Chromium'))('%s', (_, those) => {
  // oxlint-disable-next-line vitest/expect-expect -- the expectations stand in the cases
  test.each(those)('%s', (__, run) => run(attacked))
})
