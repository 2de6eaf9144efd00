import { publishedLimits } from './published.ts'
import type { Limit } from './schema.ts'
import { fitOf, type Scope, whyNot } from './scope.ts'

/** The published limit with this id. */
export const publishedLimit = (id: string): Limit | undefined => publishedLimits.find((limit) => limit.id === id)

/** The editions whose protocol may ask for a one-point result to be multiplied by 1.1. */
export const askFactor = (): string[] => [
  ...new Set(publishedLimits.filter((limit) => limit.onePointFactor).map(({ edition }) => edition)),
]

/** Limits that fit a test, best first; `others`: each one that does not, with the reason in a sentence. */
export type Fitting = Limit[] & { others: { limit: Limit; why: string }[] }

/**
 * The published limits that a test can be compared with, best first: those written for nothing that the test does not say
 * before those that hold on a condition, and of both the newest code first. `others` has each of the rest, with the reason.
 *
 * @param scope what is known of the test; what is not known rules nothing out
 * @example
 * limitsFor({ subject: 'enclosure', climateZone: '5A' })[0]?.id // 'iecc-2024-air-changes-zones-4-5'
 * limitsFor({ subject: 'ducts' }).others[0]?.why // 'The limit “IECC 2024, house, zones 0 to 2: 4.0 ACH50” is for an enclosure; this test is of ducts.'
 */
export function limitsFor(scope: Scope): Fitting {
  const sure: Limit[] = []
  const onCondition: Limit[] = []
  const others: Fitting['others'] = []
  for (const limit of publishedLimits) {
    const why = whyNot(limit, scope)
    if (why !== undefined) others.push({ limit, why })
    else if (fitOf(limit, scope).unsaid.length > 0) onCondition.push(limit)
    else sure.push(limit)
  }
  return Object.assign([...sure, ...onCondition], { others })
}

/** Of the limits that fit a test, the one nearest to `limit`: on its figure in its edition, on its figure, or the first. */
export function instead(limit: Limit, scope: Scope): Limit | undefined {
  const fits = limitsFor(scope)
  const alike = fits.filter(({ figure }) => figure === limit.figure)
  return alike.find(({ edition }) => edition === limit.edition) ?? alike[0] ?? fits[0]
}
