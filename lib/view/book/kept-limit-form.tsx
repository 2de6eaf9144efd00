import { useState } from 'preact/hooks'
import type { KeptLimit } from '../../job/schema.ts'
import { ownLimitUnits } from '../../job/kept-limit.ts'
import { ownLimitFigures } from '../../job/own-limit.ts'
import type { LimitTerms } from '../../limits/schema.ts'
import { subjectOf, wordOf } from '../../reduce/figures/index.ts'
import { symbol } from '../../units/symbol.ts'
import { useId } from '../parts/use-id.ts'
import { ChoiceField, TextField } from './field.tsx'
import { say } from '../../words/say.ts'

const figures = [...ownLimitFigures.enclosure, ...ownLimitFigures.ducts]
const ofDucts = (figure: string): boolean => subjectOf(figure) === 'ducts'
const firstUnit = (figure: string): string => ownLimitUnits(figure)[0] ?? ''

/** A figure that a limit is on, in words: `ducts, CFM25`. */
export const figureWords = (figure: string, unit = firstUnit(figure)): string =>
  ofDucts(figure) ? say`ducts, ${wordOf(figure, unit)}` : wordOf(figure, unit)

export const blankLimit = (): KeptLimit => ({
  id: crypto.randomUUID(),
  name: '',
  figure: 'air-changes-50',
  value: '',
  unit: '1/h',
  origin: '',
})

type Stage = NonNullable<LimitTerms['stages']>[number]

const zones = [0, 1, 2, 3, 4, 5, 6, 7, 8].map((zone) => [zone, String(zone)] as const)
const stages: readonly (readonly [Stage, string])[] = [
  ['rough-in', say`rough-in`],
  ['rough-in without air handler', say`rough-in without air handler`],
  ['final', say`finished work`],
  ['existing', say`existing ducts or buildings`],
]
const leakages = [
  ['', say`either`],
  ['total', say`total leakage`],
  ['outside', say`leakage to outside`],
] as const
const comparisons = [
  ['<=', say`at most`],
  ['<', say`less than`],
] as const

/** Several of a list; none of them means any. */
function Several<T extends string | number>({
  label,
  options,
  chosen,
  onPick,
}: {
  label: string
  options: readonly (readonly [T, string])[]
  chosen: readonly T[]
  onPick: (chosen: T[]) => void
}) {
  return (
    <fieldset class="fld wide several">
      <legend>{label}</legend>
      {options.map(([value, words]) => (
        <label key={value}>
          <input
            type="checkbox"
            checked={chosen.includes(value)}
            onChange={() =>
              onPick(
                options
                  .map(([one]) => one)
                  .filter((one) => (one === value ? !chosen.includes(one) : chosen.includes(one))),
              )
            }
          />{' '}
          {words}
        </label>
      ))}
    </fieldset>
  )
}

interface Props {
  begin: KeptLimit
  /** Names of the sets there are. */
  sets: readonly string[]
  /** Called at each change. */
  onType: (limit: KeptLimit) => void
  onKeep: (limit: KeptLimit) => void
  onLeave: () => void
}

/** A limit of the owner's own: its number, where it stands and what it is written for. */
export function KeptLimitForm({ begin, sets, onType, onKeep, onLeave }: Props) {
  const [draft, setDraft] = useState(begin)
  const listId = useId()
  const terms = draft.terms ?? {}
  const set = (patch: Partial<KeptLimit>) => {
    const now = { ...draft, ...patch }
    setDraft(now)
    onType(now)
  }
  /** A term that says nothing is left out. */
  const setTerm = (patch: LimitTerms, says: boolean) => {
    const rest = Object.fromEntries(Object.entries(terms).filter(([key]) => !Object.hasOwn(patch, key)))
    set({ terms: says ? { ...rest, ...patch } : rest })
  }
  return (
    <form
      class="sheet"
      onSubmit={(event) => {
        event.preventDefault()
        onKeep(draft)
      }}
    >
      <div class="fields">
        <TextField label={say`Name`} value={draft.name} onInput={(name) => set({ name })} />
        <TextField
          label={say`Set: edition or local code`}
          value={draft.set ?? ''}
          list={listId}
          placeholder={say`none`}
          onInput={(name) => set({ set: name })}
        />
        <datalist id={listId}>
          {sets.map((name) => (
            <option key={name} value={name} />
          ))}
        </datalist>
        <ChoiceField
          label={say`On the figure`}
          value={draft.figure}
          options={figures.map((figure) => [figure, figureWords(figure)] as const)}
          onPick={(figure) => {
            const { leakage, ...others } = terms
            const kept = ofDucts(figure) && leakage ? { ...others, leakage } : others
            set({ figure, unit: firstUnit(figure), terms: kept })
          }}
        />
        <ChoiceField
          label={say`Has to be`}
          value={terms.comparison ?? '<='}
          options={comparisons}
          onPick={(comparison) => setTerm({ comparison }, comparison === '<')}
        />
        <TextField label={say`Limit`} mode="decimal" value={draft.value} onInput={(value) => set({ value })} />
        <ChoiceField
          label={say`Unit`}
          value={draft.unit}
          options={ownLimitUnits(draft.figure).map((unit) => [unit, symbol(unit)] as const)}
          onPick={(unit) => set({ unit })}
        />
        {ofDucts(draft.figure) && (
          <ChoiceField
            label={say`Written for`}
            value={terms.leakage ?? ''}
            options={leakages}
            onPick={(leakage) => setTerm({ leakage: leakage || 'total' }, leakage !== '')}
          />
        )}
        <Several
          label={say`Climate zones; none ticked: any`}
          options={zones}
          chosen={terms.climateZones ?? []}
          onPick={(climateZones) => setTerm({ climateZones }, climateZones.length > 0)}
        />
        <Several
          label={say`Stages of the work; none ticked: any`}
          options={stages}
          chosen={terms.stages ?? []}
          onPick={(picked) => setTerm({ stages: picked }, picked.length > 0)}
        />
        <TextField
          label={say`Where it stands`}
          wide
          value={draft.origin}
          placeholder={say`paper, edition, clause, date`}
          onInput={(origin) => set({ origin })}
        />
      </div>
      <div class="acts">
        <button type="submit" class="b low first">
          {say`Keep it`}
        </button>
        <button type="button" class="b low bare" onClick={onLeave}>
          {say`Leave it`}
        </button>
      </div>
    </form>
  )
}
