import { ownLimitFigure, ownLimitFigures, ownLimitUnit } from '../../job/own-limit.ts'
import { limitsOf } from '../../job/verdict.ts'
import { labelOf } from '../../reduce/figures/index.ts'
import { symbol } from '../../units/symbol.ts'
import { Choice } from './choice.tsx'
import { Field } from './field.tsx'
import { useBench, useDeskContext, useFound } from './use-context.ts'

/** Which limit the test is compared with, and whether a one-point result is multiplied before. */
export function LimitField() {
  const { job } = useDeskContext()
  const { test, editTest } = useBench()
  const found = useFound()
  const { sheet } = test
  const ownUnit = ownLimitUnit(test)
  const ownFigures = ownLimitFigures[sheet.subject].map((id): [string, string] => [
    id,
    labelOf(id, ownLimitUnit({ ...test, ownLimitFigure: id })),
  ])
  const options: [string, string][] = [
    ['', 'none: figures and interval only'],
    ...limitsOf(job, test).map(({ id, title }): [string, string] => [id, title]),
    ['own', 'own limit'],
  ]
  // A limit that was chosen stays in the list when the zone or the stage no longer fits it.
  if (!options.some(([id]) => id === test.limit)) options.push([test.limit, `${test.limit} (does not fit this test)`])
  return (
    <>
      <Choice
        id="limit"
        label="Limit"
        wide
        value={test.limit}
        options={options}
        problem={found('limit')}
        onPick={(limit) => editTest({ limit })}
      />
      {test.limit === 'own' && (
        <>
          <Choice
            label="Own limit on"
            value={ownLimitFigure(test)}
            options={ownFigures}
            onPick={(figure) => editTest({ ownLimitFigure: figure })}
          />
          <Field
            label="At most"
            unit={symbol(ownUnit)}
            numeric
            value={test.ownLimit}
            problem={found('ownLimit')}
            onInput={(ownLimit) => editTest({ ownLimit })}
          />
        </>
      )}
      {sheet.procedure === 'one-point' && (
        <label class="tick wide">
          <input
            type="checkbox"
            checked={test.onePointFactor}
            onChange={(event) => editTest({ onePointFactor: event.currentTarget.checked })}
          />
          <span>
            Multiply the one-point result by 1.1 before comparing and entering
            <small>Off unless your limit or program asks for it; what was entered is said in the book.</small>
          </span>
        </label>
      )}
    </>
  )
}
