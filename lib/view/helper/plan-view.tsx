import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Control } from '../../form/controls.ts'
import type { Plan } from '../../form/plan.ts'
import { Icon } from '../icons.tsx'
import { placesOf } from './candidate-places.ts'
import { CopyList } from './copy-list.tsx'
import { Dock } from './dock.tsx'
import { Marks } from './marks.tsx'
import { OtherFrames } from './other-frames.tsx'
import { planMarks } from './plan-marks.ts'
import { canBeFilled, PlanTable } from './plan-table.tsx'
import { samePlan } from './same-plan.ts'
import { useShell } from './shell.ts'
import { Counts } from './status.tsx'
import { tooMany } from './too-many.ts'
import { useSurvey } from './use-survey.ts'
import { say } from '../../words/say.ts'

interface PlanViewProps {
  /** The plan as the page is at this moment. */
  compute: () => Plan
  undo: boolean
  job: string
  /** Whether the book is being told of the fill. */
  noting: boolean
  problem: string
  onChoose: (binding: string, candidate: number) => void
  onFill: (plan: Plan, chosen: ReadonlySet<string>) => void
  onMap: () => void
}

/** What would be typed, before anything is. */
export function PlanView({ compute, undo, job, noting, problem, onChoose, onFill, onMap }: PlanViewProps) {
  const { close } = useShell()
  const survey = useSurvey()
  const [plan, setPlan] = useState(compute)
  const shown = useRef(plan)
  shown.current = plan
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const [pointed, setPointed] = useState<Control | string>()
  const [copying, setCopying] = useState(false)
  const [changed, setChanged] = useState(false)

  // The person's own choice shows the plan anew without a word; a page that changed it is named.
  const asked = useRef(compute)
  useEffect(() => {
    const now = compute()
    const own = asked.current !== compute
    asked.current = compute
    setPlan((before) => (samePlan(before, now) ? before : now))
    if (!own && !samePlan(shown.current, now)) setChanged(true)
  }, [compute, survey])

  const marks = useMemo(() => planMarks(plan, left, pointed), [plan, left, pointed])
  const fillable = plan.lines.filter((line) => canBeFilled(line) && !left.has(line.binding))

  const confirm = () => {
    const now = compute()
    const chosen = new Set(plan.lines.map(({ binding }) => binding).filter((binding) => !left.has(binding)))
    if (!samePlan(plan, now)) {
      setPlan(now)
      setChanged(true)
      return
    }
    onFill(now, chosen)
  }

  const count = fillable.length === 1 ? say`1 control` : say`${fillable.length} controls`
  return (
    <>
      <Marks marks={marks} />
      <Dock
        wide
        title={
          undo
            ? say`Put back what was there`
            : plan.lines.length === 1
              ? say`Plan: 1 control`
              : say`Plan: ${plan.lines.length} controls`
        }
        aside={job}
        closeLabel={say`Close without filling`}
        onClose={close}
        onEscape={close}
        footer={
          <>
            <button type="button" class="b first" disabled={noting || fillable.length === 0} onClick={confirm}>
              {undo ? say`Put back ${count}` : say`Fill ${count}`}
            </button>
            <button type="button" class="b" aria-pressed={copying} onClick={() => setCopying(!copying)}>
              {copying ? say`Table` : say`Copy list`}
            </button>
            {!undo && (
              <button type="button" class="b" onClick={onMap}>
                {say`Change the map`}
              </button>
            )}
            <button type="button" class="b" onClick={close}>
              {say`Close`}
            </button>
          </>
        }
      >
        <p class="promise">{say`Nothing is typed until you confirm. Nothing is submitted.`}</p>
        <OtherFrames />
        {plan.steps && (
          <p class="note">
            {say`Step ${plan.steps.at} of ${plan.steps.of}: ${plan.steps.here} of ${plan.steps.all} controls are here. The others wait for their steps.`}
          </p>
        )}
        {survey.more && <p class="note">{tooMany}</p>}
        {problem && (
          <p class="note bad" role="alert">
            {say`${problem} The copy list below still works.`}
          </p>
        )}
        {changed && (
          <p class="note" role="alert">
            {say`The page has changed since this plan was shown. Nothing was typed. Look through the plan as it is now, then confirm again.`}
          </p>
        )}
        <Counts of={plan.lines.map(({ state }) => state)} />
        {copying || problem ? (
          <CopyList lines={plan.lines} />
        ) : (
          <PlanTable
            lines={plan.lines}
            left={left}
            candidates={(binding) => placesOf(plan.candidates.get(binding) ?? [])}
            elementsOf={(binding) => (plan.targets.get(binding) ?? plan.candidates.get(binding)?.[0])?.elements}
            onLeave={(binding, leave) =>
              setLeft((before) => {
                const next = new Set(before)
                if (leave) next.add(binding)
                else next.delete(binding)
                return next
              })
            }
            onChoose={(binding, candidate) => {
              setPointed(undefined)
              onChoose(binding, candidate.index)
            }}
            onPoint={(binding, candidate) =>
              setPointed(candidate && binding ? plan.candidates.get(binding)?.[candidate.index] : binding)
            }
          />
        )}
        {!undo && (
          <p class="q small foot">
            <Icon name="hand" /> {say`${leftWords(plan.leftToYou)} Every control is read back after the fill.`}
          </p>
        )}
      </Dock>
    </>
  )
}

function leftWords(names: readonly string[]): string {
  if (names.length === 0) return say`Certification, signature, password and payment are always left to you.`
  return say`Left to you: ${names.map((name) => `“${name}”`).join(', ')}.`
}
