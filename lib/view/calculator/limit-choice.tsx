import { takesOnePointFactor } from '../../job/one-point-factor.ts'
import { ownLimitFigure, ownLimitFigures, ownLimitUnit } from '../../job/own-limit.ts'
import type { Job, Test } from '../../job/schema.ts'
import { limitsOf } from '../../job/verdict.ts'
import { askFactor, publishedLimit } from '../../limits/index.ts'
import { wordOf } from '../../reduce/figures/index.ts'
import { symbol } from '../../units/symbol.ts'
import { Choice } from './choice.tsx'
import { Field } from './field.tsx'
import type { Offer } from './sheet-fields.tsx'
import { asRead } from '../../results/in-locale.ts'
import { wordsAfter } from '../../results/words-after.ts'
import { say } from '../../words/say.ts'

/** A title with its number first, which a closed list shows: `3.0 ACH50: IECC 2021, house, zones 3 to 8`. */
const numberFirst = (title: string): string => title.replace(/^(.*): ([^:]*\d[^:]*)$/, '$2: $1')

/** An own limit that was typed over is no copy of a kept one. */
const typedOver = { ownLimitOrigin: '', ownLimitTerms: {} }

/** Limits that the owner keeps and that fit the test, as the list has them. */
export interface KeptOptions {
  options: readonly (readonly [id: string, words: string])[]
  /** The one that the test was given. */
  taken: string | undefined
  /** What the test holds when it is given this one; nothing for an id of another list. */
  take: (id: string) => Partial<Test> | undefined
}

interface Props {
  /** An id by which other parts of the view find the list. */
  listId?: string
  job: Pick<Job, 'building' | 'units'>
  test: Test
  found: (path: string) => string | undefined
  offer: Offer
  /** Whether a limit is offered: its id, or `own`. */
  offers?: (limit: string) => boolean
  kept?: KeptOptions
  onTest: (patch: Partial<Test>) => void
}

/** Which limit the test is compared with, and whether a one-point result is multiplied before. */
export function LimitChoice({ listId, job, test, found, offer, offers = () => true, kept, onTest }: Props) {
  const { sheet } = test
  const worded = (text: string) => wordsAfter(sheet.procedure, text)
  const ownUnit = ownLimitUnit(test)
  const ownFigures = ownLimitFigures[sheet.subject].map((id): [string, string] => [
    id,
    worded(wordOf(id, ownLimitUnit({ ...test, ownLimitFigure: id }))),
  ])
  const options: (readonly [string, string])[] = [
    ['', say`none: figures and interval only`],
    ...limitsOf(job, test).map((limit): [string, string] => [limit.id, asRead(worded(numberFirst(limit.title)))]),
    ...(kept?.options ?? []),
    ['own', say`own limit`],
  ]
  const offered = options.filter(([id]) => id === test.limit || offers(id))
  // A limit that was chosen stays in the list when the zone or the stage no longer fits it.
  if (!offered.some(([id]) => id === test.limit))
    offered.push([
      test.limit,
      say`${asRead(worded(publishedLimit(test.limit)?.title ?? test.limit))} (does not fit this test)`,
    ])
  const fixed = offer.fixed('limit')
  return (
    <>
      {offer.shows('limit') && (
        <Choice
          {...(listId && { id: listId })}
          label={say`Limit`}
          wide
          fixed={fixed}
          value={kept?.taken ?? test.limit}
          options={offered}
          problem={found('limit')}
          onPick={(limit) => onTest(kept?.take(limit) ?? { limit, ...typedOver })}
        />
      )}
      {offer.shows('ownLimit') && test.limit === 'own' && (
        <>
          <Choice
            label={say`Own limit on`}
            fixed={offer.fixed('ownLimit')}
            value={ownLimitFigure(test)}
            options={ownFigures}
            onPick={(figure) => onTest({ ownLimitFigure: figure, ...typedOver })}
          />
          <Field
            label={say`At most`}
            unit={symbol(ownUnit)}
            numeric
            fixed={offer.fixed('ownLimit')}
            value={test.ownLimit}
            problem={found('ownLimit')}
            onInput={(ownLimit) => onTest({ ownLimit, ...typedOver })}
          />
        </>
      )}
      {offer.shows('onePointFactor') && takesOnePointFactor(test) && (
        <label class="tick wide">
          <input
            type="checkbox"
            checked={test.onePointFactor}
            disabled={offer.fixed('onePointFactor')}
            onChange={(event) => onTest({ onePointFactor: event.currentTarget.checked })}
          />
          <span>
            {asRead(say`Multiply the one-point result by 1.1 before comparing and entering`)}
            <small>
              {say`Off unless your limit or program asks for it. Of the limits here these may: ${asRead(askFactor().join(', '))} (from memory).`}
            </small>
          </span>
        </label>
      )}
    </>
  )
}
