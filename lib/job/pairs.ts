/** Which test before the work is compared with which one after it. */
import type { Test } from './schema.ts'

export interface Pair {
  before: Test
  after: Test
}

const called = (role: string) => (test: Test) => test.role.trim().toLowerCase() === role

/** How like two tests are, from 0; undefined where one says nothing of the other. */
function likeness({ sheet: one, stage }: Test, { sheet: other, stage: later }: Test): number | undefined {
  const same = (name: 'direction' | 'procedure' | 'ductLeakage'): boolean => one[name] === other[name]
  const ducts = one.subject === 'ducts'
  if (one.subject !== other.subject || (ducts && !same('ductLeakage'))) return undefined
  // A stage is a matter of ducts; how the flow was brought to 50 Pa matters less than which way the air went.
  return (same('direction') ? 4 : 0) + (same('procedure') ? 2 : 0) + (ducts && stage === later ? 1 : 0)
}

/**
 * The tests with the role before and those with the role after in pairs, each test in one at most: the most alike first,
 * then in the order of the job; of the house before those of ducts. Tests of other subjects, and ducts tested for another
 * leakage, are never compared.
 */
export function pairsOf(tests: readonly Test[]): Pair[] {
  const all = tests.filter(called('before')).flatMap((before) =>
    tests.filter(called('after')).flatMap((after) => {
      const like = likeness(before, after)
      return like === undefined ? [] : { before, after, like }
    }),
  )
  const taken = new Set<Test>()
  const pairs: Pair[] = []
  for (const { before, after } of all.toSorted((a, b) => b.like - a.like)) {
    if (taken.has(before) || taken.has(after)) continue
    taken.add(before).add(after)
    pairs.push({ before, after })
  }
  const order = ({ after }: Pair) => tests.indexOf(after) + (after.sheet.subject === 'ducts' ? tests.length : 0)
  return pairs.toSorted((a, b) => order(a) - order(b))
}
