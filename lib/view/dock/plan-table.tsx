import { Fragment } from 'preact'
import type { PlanLine } from '../../form/schema.ts'
import type { CandidateImage as Candidate } from '../../messages/dock-messages.ts'
import { ChooseControl } from './choose-control.tsx'
import { LineNumber } from './line-number.tsx'
import { SectionRow } from './section-row.tsx'
import { Status } from './status.tsx'
import { tickWords } from './tick-words.ts'
import { say } from '../../words/say.ts'

interface PlanTableProps {
  lines: readonly PlanLine[]
  /** Bindings that the person has left out. */
  left: ReadonlySet<string>
  /** Controls that fit an ambiguous binding equally well, or come nearest to one that is not found. */
  candidates: (binding: string) => readonly Candidate[]
  /** Bindings whose control is somewhere on the page. */
  placed: readonly string[]
  onLeave: (binding: string, leave: boolean) => void
  onChoose: (binding: string, candidate: Candidate) => void
  onPoint: (binding: string | undefined, candidate?: Candidate) => void
}

export const canBeFilled = (line: PlanLine) => line.state === 'to enter' || line.state === 'will replace'

const needsALook = (line: PlanLine) => !canBeFilled(line) && line.state !== 'already there'

export function PlanTable({ lines, left, candidates, placed, onLeave, onChoose, onPoint }: PlanTableProps) {
  return (
    <table class="t plan">
      <thead>
        <tr>
          <th class="no">
            <span class="vh">{say`Number`}</span>
          </th>
          <th>
            <span class="vh">{say`Fill`}</span>
          </th>
          <th>{say`Control`}</th>
          <th>{say`Text to enter`}</th>
          <th>{say`There now`}</th>
          <th>{say`Status`}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line, index) => (
          <Fragment key={line.binding}>
            <SectionRow of={line} before={lines[index - 1]} columns={6} />
            <tr
              class={`${needsALook(line) ? 'look' : ''} ${left.has(line.binding) ? 'out' : ''}`}
              onPointerEnter={() => onPoint(line.binding)}
              onPointerLeave={() => onPoint(undefined)}
            >
              <td class="no">
                <LineNumber
                  number={index + 1}
                  control={line.control}
                  placed={placed.find((binding) => binding === line.binding)}
                />
              </td>
              <td class="ti">
                {canBeFilled(line) && (
                  <label class="tick">
                    <input
                      type="checkbox"
                      checked={!left.has(line.binding)}
                      aria-label={say`Fill ${index + 1}, ${line.control}`}
                      onChange={(event) => onLeave(line.binding, !event.currentTarget.checked)}
                    />
                  </label>
                )}
              </td>
              <th scope="row">
                {line.control}
                <small>{line.source}</small>
                {line.note && <small class="why">{line.note}</small>}
                {candidates(line.binding).length > 0 && (
                  <ChooseControl
                    candidates={candidates(line.binding)}
                    onChoose={(candidate) => onChoose(line.binding, candidate)}
                    onPoint={(candidate) => onPoint(line.binding, candidate)}
                  />
                )}
              </th>
              <td class="tx">
                {tickWords(line.text) || (canBeFilled(line) && <span class="q sans">{say`empty`}</span>)}
              </td>
              <td class="nw" data-head="now">
                {line.state === 'will replace' ? (
                  <s>{tickWords(line.now)}</s>
                ) : (
                  tickWords(line.now) || <span class="q sans">{say`empty`}</span>
                )}
              </td>
              <td>{left.has(line.binding) ? <span class="q">{say`left out`}</span> : <Status of={line.state} />}</td>
            </tr>
          </Fragment>
        ))}
      </tbody>
    </table>
  )
}
