/** A limit that the owner keeps, or that an office sets, taken into a test as its own limit. */
import { publishedLimits } from '../limits/published.ts'
import type { LimitTerms } from '../limits/schema.ts'
import { whyNot } from '../limits/scope.ts'
import { limitOf, scopeOf } from './verdict.ts'
import { ownLimitFigure, ownLimitFigures, ownLimitUnit } from './own-limit.ts'
import type { Job, KeptLimit, Test } from './schema.ts'
import { subjectOf } from '../reduce/figures/index.ts'
import { unitChoices } from './units-by-place.ts'

const originOf = ({ name, origin, set }: KeptLimit): string => [set, name, origin].filter(Boolean).join(', ')

const asText = (terms: LimitTerms = {}): string =>
  JSON.stringify(Object.entries(terms).toSorted(([a], [b]) => (a < b ? -1 : 1)))

/** What a test holds when it is compared with a kept limit: a copy, which stays when the kept one changes. */
export const takeLimit = (kept: KeptLimit): Partial<Test> => ({
  limit: 'own',
  ownLimitFigure: kept.figure,
  ownLimit: kept.value,
  ownLimitOrigin: originOf(kept),
  ownLimitTerms: kept.terms ?? {},
})

const isTaken = (test: Test, kept: KeptLimit): boolean =>
  test.limit === 'own' &&
  kept.figure === ownLimitFigure(test) &&
  kept.value === test.ownLimit &&
  originOf(kept) === test.ownLimitOrigin &&
  asText(kept.terms) === asText(test.ownLimitTerms)

function fits(job: Pick<Job, 'building' | 'units'>, test: Test, kept: KeptLimit): boolean {
  const { limit } = limitOf({ ...test, ...takeLimit(kept) })
  return limit === undefined || whyNot(limit, scopeOf(job, test)) === undefined
}

/**
 * The kept limits that a test can be compared with: on a figure of its subject, in the unit its cell is typed in, and
 * written for nothing that the test is not. One that was taken stays.
 */
export function keptLimitsFor(
  job: Pick<Job, 'building' | 'units'>,
  test: Test,
  limits: readonly KeptLimit[],
): KeptLimit[] {
  const figures: readonly string[] = ownLimitFigures[test.sheet.subject]
  return limits.filter(
    (kept) =>
      isTaken(test, kept) ||
      (figures.includes(kept.figure) &&
        ownLimitUnit({ ...test, ownLimitFigure: kept.figure }) === kept.unit &&
        fits(job, test, kept)),
  )
}

/** The kept limit that a test was given, as long as neither has changed. */
export const takenLimit = (test: Test, limits: readonly KeptLimit[]): KeptLimit | undefined =>
  limits.find((kept) => isTaken(test, kept))

/** The editions that a set can begin with, as the list of published limits has them. */
export const editions = (): string[] => [...new Set(publishedLimits.map(({ edition }) => edition))]

/**
 * The limits of a published edition as a set of one's own, to be changed to what a place enforces.
 *
 * @param set name of the new set
 */
export function setFrom(edition: string, set: string): KeptLimit[] {
  return publishedLimits
    .filter((limit) => limit.edition === edition)
    .map(({ title, figure, value, unit, clause, ...limit }) => {
      const { comparison, climateZones, condition, leakage, stages, procedures, directions, volume, size } = limit
      const terms = { comparison, climateZones, condition, leakage, stages, procedures, directions, volume, size }
      const named = title.startsWith(`${edition}, `) ? title.slice(edition.length + 2) : title
      return {
        id: crypto.randomUUID(),
        // A title ends with the number, which the owner may change.
        name: named.replace(/: [^:]*$/, ''),
        figure,
        value: String(value),
        unit,
        origin: [edition, clause].filter(Boolean).join(', '),
        set,
        terms: Object.fromEntries(Object.entries(terms).filter(([, one]) => one !== undefined)),
      }
    })
}

/** Every unit that an own limit on a figure can be typed in. */
export function ownLimitUnits(figure: string): string[] {
  const sheet = { subject: subjectOf(figure) } as Test['sheet']
  return [...new Set(unitChoices.map((units) => ownLimitUnit({ sheet, ownLimitFigure: figure, units })))]
}
