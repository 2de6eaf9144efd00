/** A limit that the owner keeps, or that an office sets, taken into a test as its own limit. */
import { ownLimitFigure, ownLimitFigures, ownLimitUnit } from './own-limit.ts'
import type { KeptLimit, Test } from './schema.ts'

const originOf = ({ name, origin }: KeptLimit): string => [name, origin].filter(Boolean).join(', ')

/** The kept limits that a test can be compared with: on a figure of its subject, in the unit its cell is typed in. */
export function keptLimitsFor(test: Test, limits: readonly KeptLimit[]): KeptLimit[] {
  const figures: readonly string[] = ownLimitFigures[test.sheet.subject]
  return limits.filter(
    ({ figure, unit }) => figures.includes(figure) && ownLimitUnit({ ...test, ownLimitFigure: figure }) === unit,
  )
}

/** What a test holds when it is compared with a kept limit: a copy, which stays when the kept one changes. */
export const takeLimit = (kept: KeptLimit): Partial<Test> => ({
  limit: 'own',
  ownLimitFigure: kept.figure,
  ownLimit: kept.value,
  ownLimitOrigin: originOf(kept),
})

/** The kept limit that a test was given, as long as neither has changed. */
export function takenLimit(test: Test, limits: readonly KeptLimit[]): KeptLimit | undefined {
  if (test.limit !== 'own') return undefined
  return limits.find(
    (kept) =>
      kept.figure === ownLimitFigure(test) && kept.value === test.ownLimit && originOf(kept) === test.ownLimitOrigin,
  )
}
