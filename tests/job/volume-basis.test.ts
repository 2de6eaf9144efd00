import { expect, test } from 'vitest'
import type { Building } from '../../lib/job/schema.ts'
import { verdictOf } from '../../lib/job/verdict.ts'
import { fakeJob, fakeTest } from './fake.ts'

/** A house of 16,000 ft3, which is 453 m3, against the German limit over its net air volume (GEG § 26). */
function judged(volumeBasis?: Building['volumeBasis']) {
  const one = fakeTest({ procedure: 'iso-9972' }, { limit: 'germany-air-changes' })
  const job = fakeJob({ volume: '16000', ...(volumeBasis !== undefined && { volumeBasis }) })
  return verdictOf(job, one, { 'air-changes-50': { value: 1.2, unit: '1/h', low: 1.1, high: 1.3 } })
}

const said = (basis?: Building['volumeBasis']) =>
  judged(basis)
    .verdict?.sentences.map(({ text }) => text)
    .join(' ')

test('a limit over the net air volume gives no verdict on a gross one, and says why', () => {
  const { verdict, withheld } = judged('gross')
  expect(verdict).toBeUndefined()
  expect(withheld?.withheld).toContain('is for the net air volume; this test is of the gross volume.')
})

test('on the net one the condition is gone from the verdict, and stands in it while nothing is said', () => {
  expect(said('net')).not.toContain('net air volume')
  expect(said('')).toContain('the net air volume')
  expect(said()).toContain('the net air volume')
})
