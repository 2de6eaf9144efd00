import type { CandidateImage as Candidate } from '../../messages/dock-messages.ts'
import { say } from '../../words/say.ts'

interface ChooseControlProps {
  candidates: readonly Candidate[]
  onChoose: (candidate: Candidate) => void
  onPoint: (candidate: Candidate | undefined) => void
}

/** Buttons for the controls that fit equally well; pointing at one outlines it on the page. */
export function ChooseControl({ candidates, onChoose, onPoint }: ChooseControlProps) {
  return (
    <div class="two-c" role="group" aria-label={say`Which control is meant?`}>
      {candidates.map((candidate) => (
        <button
          key={candidate.index}
          type="button"
          class="b low"
          onPointerEnter={() => onPoint(candidate)}
          onPointerLeave={() => onPoint(undefined)}
          onFocus={() => onPoint(candidate)}
          onBlur={() => onPoint(undefined)}
          onClick={() => onChoose(candidate)}
        >
          {candidate.label}
        </button>
      ))}
    </div>
  )
}
