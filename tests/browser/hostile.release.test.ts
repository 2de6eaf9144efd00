/** Pages that mean harm, through the real action of the built extension. */
import { afterAll, afterEach, beforeAll, describe, test } from 'vitest'
import { launch } from './harness.ts'
import { Attacked } from './hostile.ts'
import { cases } from './hostile-cases.ts'

const attacked = new Attacked()

beforeAll(() => attacked.start(launch))
afterEach(() => attacked.leave())
afterAll(() => attacked.close())

describe.each(Object.entries(cases))('%s', (_, those) => {
  // oxlint-disable-next-line vitest/expect-expect -- the expectations stand in the cases
  test.each(Object.entries(those))('%s', (__, run) => run(attacked))
})
