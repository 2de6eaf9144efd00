/** A sample of the soak of torn writes in Firefox. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { generator } from '../random.ts'
import { tearingFirefox } from '../soak/torn-firefox.ts'

let profile: string

beforeEach(() => {
  profile = mkdtempSync(join(tmpdir(), 'profile-'))
})
afterEach(() => rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 }))

it('loses no entry, and nothing without a word, when Firefox is killed while it saves and its log is torn', async () => {
  const { lost, silent, broken, older, cuts, kills } = await tearingFirefox(profile, 3, generator(5))
  expect({ lost, silent, broken, older }).toEqual({ lost: [], silent: 0, broken: 0, older: 0 })
  expect({ kills, cuts }).toEqual({ kills: 3, cuts: 3 })
}, 400_000)
