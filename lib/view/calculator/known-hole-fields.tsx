import { emptyFieldCheck } from '../../job/empty.ts'
import type { TypedFieldCheck } from '../../job/schema.ts'
import { CheckList } from '../figure/check-list.tsx'
import { Field } from './field.tsx'
import { flowWords, openingWords } from '../../results/unit-words.ts'
import { useBench, useFound } from './use-context.ts'
import { say } from '../../words/say.ts'

/** A check of the flow device in the field: what passes a hole of known size. */
export function KnownHoleFields() {
  const { test, editSheet, checks } = useBench()
  const found = useFound()
  const { units } = test
  const typed = test.sheet.fieldCheck ?? emptyFieldCheck()
  const result = checks.find(({ id }) => id === 'known-hole')
  const field = (key: keyof TypedFieldCheck, label: string, unit = '', hint = '') => (
    <Field
      label={label}
      numeric
      unit={unit}
      hint={hint}
      value={typed[key]}
      problem={found(`fieldCheck.${key}`)}
      onInput={(value) =>
        editSheet((now) => ({ fieldCheck: { ...(now.fieldCheck ?? emptyFieldCheck()), [key]: value } }))
      }
    />
  )
  return (
    <div class="fields">
      <p class="wide">
        {say`Cut a sharp-edged hole into a thin plate that closes an opening. Measure at one pressure with the hole open and with it taped over: the flow through it is the difference.`}
      </p>
      {field('area', say`Area of the hole`, openingWords[units.length])}
      {field('pressure', say`Pressure across it`, 'Pa')}
      {field('flow', say`Flow measured through it`, flowWords[units.flow])}
      {field('discharge', say`Discharge coefficient`, '', '0.611')}
      {result && (
        <div class="wide" role="status">
          <CheckList checks={[result]} />
        </div>
      )}
    </div>
  )
}
