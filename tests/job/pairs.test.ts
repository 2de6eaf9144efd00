/** Which tests before and after the work are compared: those of one kind. Common practice, no source. */
import { expect, test } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { material } from '../../lib/job/material.ts'
import { pairsOf } from '../../lib/job/pairs.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import type { Job, Test } from '../../lib/job/schema.ts'
import { knownTests, together, worksOf } from '../../lib/job/together.ts'
import { togetherWords } from '../../lib/results/together-lines.ts'

const of = (role: string): Test => demoJob().tests.find((one) => one.role === role)!
const named = (id: string, like: Test, role: string, sheet: Partial<Test['sheet']> = {}): Test => ({
  ...like,
  id,
  role,
  sheet: { ...like.sheet, ...sheet },
})
const [before, after, ducts] = [of('before'), of('after'), of('duct system 1')]
const paired = (...tests: Test[]) => pairsOf(tests).map((pair) => `${pair.before.id} ${pair.after.id}`)

const down = { direction: 'depressurize' } as const
const up = { direction: 'pressurize' } as const

test('one of each is compared, also where they differ in direction and procedure', () => {
  expect(paired(named('b', before, 'Before '), named('a', after, 'after'))).toEqual(['b a'])
  expect(paired(named('b', before, 'before', down), named('a', after, 'after', up))).toEqual(['b a'])
  expect(paired(named('b', before, 'before'), named('a', after, 'after', { procedure: 'iso-9972' }))).toEqual(['b a'])
})

test('of several each is compared with the one of its direction and procedure, whatever their order', () => {
  expect(
    paired(
      named('b down', before, 'before', down),
      named('b up', before, 'before', up),
      named('a up', after, 'after', up),
      named('a down', after, 'after', down),
    ),
  ).toEqual(['b up a up', 'b down a down'])
  expect(
    paired(
      named('b one', before, 'before'),
      named('b iso', before, 'before', { procedure: 'iso-9972' }),
      named('a iso', after, 'after', { procedure: 'iso-9972' }),
    ),
  ).toEqual(['b iso a iso'])
})

test('house and ducts are never compared, nor total leakage with that to outside; the house comes first', () => {
  const [b, a] = [named('b', before, 'before'), named('a', after, 'after')]
  const [bd, ad] = [named('bd', ducts, 'before'), named('ad', ducts, 'after')]
  expect(paired(b, ad)).toEqual([])
  expect(paired(bd, ad, b, a)).toEqual(['b a', 'bd ad'])
  expect(paired(bd, named('ao', ducts, 'after', { ductLeakage: 'outside' }))).toEqual([])
})

const job = (...tests: Test[]): Job => ({ ...demoJob(), tests })
const devices = [demoDevice()]

test('each pair has its reduction; the house bears the key of every form map, also where it is typed last', () => {
  const all = job(
    named('bd', ducts, 'before'),
    named('ad', ducts, 'after', { points: [{ ...ducts.sheet.points[0]!, flow: '35.5' }] }),
    named('b', before, 'before'),
    named('a', after, 'after'),
  )
  expect(worksOf(knownTests(all, devices)).map((work) => [work.before, work.after, work.of])).toEqual([
    ['before (2)', 'after (2)', 'CFM50'],
    ['before', 'after', 'CFM25'],
  ])
  const { items } = material(all, devices)
  const alone = material(demoJob(), devices).items
  expect(items['before+after/reduction-percent']).toEqual(alone['before+after/reduction-percent'])
  // Half of the 71 cfm that the demo job has.
  expect(items['before+after, ducts/reduction-percent']).toMatchObject({ group: 'before and after, ducts', value: 50 })
})

test('two tests that differ say in what', () => {
  const positive = after.sheet.points.map(({ pressure, ...point }) =>
    Object.assign(point, { pressure: pressure.replace(/^[-−]/, '') }),
  )
  const turned = named('a', after, 'after', { ...up, points: positive })
  const differ = (...tests: Test[]) => worksOf(knownTests(job(...tests), devices)).flatMap((work) => work.differ)
  expect(differ(before, after)).toEqual([])
  expect(differ(before, turned)).toEqual(['direction'])
  const said = togetherWords(together(job(before, turned), devices))?.groups[0]
  expect(said?.title).toBe('before to after: house, one-point')
  expect(said?.lines[0]?.note).toMatch(/^The two tests were made in opposite directions: /)
})

test('the check of a test after the work looks at the test before that it is compared with', () => {
  const house = named('b', before, 'before')
  const wrong = named('w', before, 'before', { procedure: 'iso-9972' })
  const last = named('a', after, 'after')
  const found = (one: Job) =>
    reduceTest(one, last, devices).report?.checks.find(({ id }) => id === 'before-after')?.found
  expect(found(job(wrong, house, last))).toEqual(found(job(house, last)))
  expect(found(job(house, last))).toMatch(/1445 before/)
})
