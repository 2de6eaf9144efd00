import { useRef, useState } from 'preact/hooks'
import { mostControls } from '../../bounds.ts'
import type { PlanSeen } from '../../messages/dock-messages.ts'
import { Icon } from '../parts/icons.tsx'
import { CopyList } from './copy-list.tsx'
import { Dock } from './dock.tsx'
import { OtherFrames } from './other-frames.tsx'
import { canBeFilled, PlanTable } from './plan-table.tsx'
import { useShell } from './shell.ts'
import { Counts } from './status.tsx'
import { tooMany } from './too-many.ts'
import { language, say } from '../../words/say.ts'

/** What would be typed, before anything is. */
export function PlanView({ plan }: { plan: PlanSeen }) {
  const { tell, close, seen } = useShell()
  const [copying, setCopying] = useState(false)
  const { undo, lines, problem, steps, noting, looking } = plan
  const left = new Set(plan.left)
  const fillable = lines.filter((line) => canBeFilled(line) && !left.has(line.binding))

  /** The plan that stood there when the pointer went down; the next one may come before it goes up. */
  const aimed = useRef(plan.number)
  const confirm = async (event: MouseEvent) => {
    if (!event.isTrusted) return
    // Keys count no clicks.
    const number = event.detail > 0 ? aimed.current : plan.number
    const now = await seen()
    tell({ type: 'fill', number, ...(now !== undefined && { seen: now }) })
  }

  const count = fillable.length === 1 ? say`1 control` : say`${fillable.length} controls`
  return (
    <Dock
      wide
      title={
        undo
          ? say`Put back what was there`
          : lines.length === 1
            ? say`Plan: 1 control`
            : say`Plan: ${lines.length} controls`
      }
      aside={plan.job}
      closeLabel={say`Close without filling`}
      onClose={close}
      onEscape={close}
      footer={
        <>
          <button
            type="button"
            class="b first"
            disabled={noting || looking !== undefined || fillable.length === 0}
            onPointerDown={() => (aimed.current = plan.number)}
            onClick={confirm}
          >
            {undo ? say`Put back ${count}` : say`Fill ${count}`}
          </button>
          <button type="button" class="b" aria-pressed={copying} onClick={() => setCopying(!copying)}>
            {copying ? say`Table` : say`Copy list`}
          </button>
          {!undo && (
            <button type="button" class="b" onClick={() => tell({ type: 'to-map' })}>
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
      <OtherFrames origins={plan.origins} />
      {steps && (
        <p class="note">
          {say`Step ${steps.at} of ${steps.of}: ${steps.here} of ${steps.all} controls are here. The others wait for their steps.`}
        </p>
      )}
      {looking !== undefined && (
        <p class="note" role="status">
          {say`This page has many controls. ${looking.toLocaleString(language())} are looked through so far; you can fill when all are.`}
        </p>
      )}
      {plan.more && <p class="note">{tooMany(mostControls)}</p>}
      {problem && (
        <p class="note bad" role="alert">
          {say`${problem} The copy list below still works.`}
        </p>
      )}
      {plan.covered && (
        <p class="note bad" role="alert">
          {say`Something of the page lay over this window, so the press did not count. Nothing was typed. Look through the plan, then confirm again.`}
        </p>
      )}
      {plan.outdated && (
        <p class="note bad" role="alert">
          {say`This plan came while you pressed, so the press did not count. Nothing was typed. Look through the plan, then confirm again.`}
        </p>
      )}
      {plan.changed && (
        <p class="note" role="alert">
          {say`The page has changed since this plan was shown. Nothing was typed. Look through the plan as it is now, then confirm again.`}
        </p>
      )}
      <Counts of={lines.map(({ state }) => state)} />
      {copying || problem ? (
        <CopyList lines={lines} />
      ) : (
        <PlanTable
          lines={lines}
          left={left}
          candidates={(binding) => plan.candidates.filter((one) => one.binding === binding)}
          placed={plan.placed}
          onLeave={(binding, leave) => tell({ type: 'leave', binding, leave })}
          onChoose={(binding, { index }) => tell({ type: 'choose', binding, candidate: index })}
          onPoint={(binding, candidate) =>
            tell({ type: 'point', binding: binding ?? '', ...(candidate && { candidate: candidate.index }) })
          }
        />
      )}
      {!undo && (
        <p class="q small foot">
          <Icon name="hand" /> {say`${leftWords(plan.leftToYou)} Every control is read back after the fill.`}
        </p>
      )}
    </Dock>
  )
}

function leftWords(names: readonly string[]): string {
  if (names.length === 0) return say`Certification, signature, password and payment are always left to you.`
  return say`Left to you: ${names.map((name) => `“${name}”`).join(', ')}.`
}
