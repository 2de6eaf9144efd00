import { titleOf } from './describe.ts'
import { WhichTest } from './which-test.tsx'
import type { Proposals } from './use-proposals.ts'
import { say } from '../../words/say.ts'

interface ProposeAllProps {
  proposals: Proposals
  /** How many controls are not bound yet. */
  unbound: number
  onPoint: (key: string | undefined) => void
}

/** The proposals that leave no doubt, for all controls not bound yet, confirmed together. */
export function ProposeAll({ proposals, unbound, onPoint }: ProposeAllProps) {
  const { all, left, leave, unsure, picked, pick, waiting, problem } = proposals
  return (
    <>
      <h2>{say`Clear proposals`}</h2>
      {!waiting && <WhichTest of={proposals} />}
      <p class="q small">
        {waiting
          ? say`Looking…`
          : problem
            ? problem
            : all.length === 0
              ? say`None of the ${unbound} controls not bound yet has one figure or field that clearly fits. Pick them one by one.`
              : all.length === 1
                ? say`1 of the ${unbound} controls not bound yet has one figure or field that clearly fits. Take out what is not right.`
                : say`${all.length} of the ${unbound} controls not bound yet have one figure or field that clearly fits. Take out what is not right.`}
      </p>
      {all.length > 0 && (
        <ul class="list">
          {all.map(({ key, control, row, reason }, index) => (
            <li key={key}>
              {control.section && control.section !== all[index - 1]?.control.section && (
                <p class="gr">{control.section}</p>
              )}
              <label class="row" onPointerEnter={() => onPoint(key)} onPointerLeave={() => onPoint(undefined)}>
                <input
                  type="checkbox"
                  checked={!left.has(key)}
                  onFocus={() => onPoint(key)}
                  onChange={(event) => leave(key, !event.currentTarget.checked)}
                />
                <span>
                  {titleOf(control)}
                  <small>{reason}</small>
                </span>
                <span class="to">
                  {row.group}: {row.label}
                  <small>{row.value || say`nothing yet`}</small>
                </span>
              </label>
            </li>
          ))}
        </ul>
      )}
      {unsure.length > 0 && (
        <>
          <h2>{say`Not clear`}</h2>
          <p class="q small">{say`Press what goes into the control; leave the others for later.`}</p>
          <ul class="list">
            {unsure.map(({ key, control, rows }) => (
              <li
                key={key}
                class="unsure"
                onPointerEnter={() => onPoint(key)}
                onPointerLeave={() => onPoint(undefined)}
                onFocusCapture={() => onPoint(key)}
              >
                <p>
                  {control.section && `${control.section}, `}
                  {titleOf(control)}
                </p>
                <div class="two-c" role="group" aria-label={titleOf(control)}>
                  {rows.map(({ id, group, label, value }) => (
                    <button
                      key={id}
                      type="button"
                      class="b low"
                      aria-pressed={picked.get(key) === id}
                      onClick={() => pick(key, picked.get(key) === id ? undefined : id)}
                    >
                      {group}: {label} <b>{value}</b>
                    </button>
                  ))}
                </div>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  )
}
