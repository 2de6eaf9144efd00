import { useEffect, useState } from 'preact/hooks'
import { listJobs } from '../../book/jobs.ts'
import type { TypedUnits } from '../../job/schema.ts'
import { unitChoices } from '../../job/units-by-place.ts'
import { Icon } from '../parts/icons.tsx'
import { ShortCautions } from './cautions.tsx'
import { flowWords, temperatureWords } from '../../results/unit-words.ts'
import { say } from '../../words/say.ts'

interface Props {
  /** False once a job was begun before: then the cautions are not in the way. */
  first: boolean
  units: TypedUnits
  onUnits: (units: TypedUnits) => void
  onStart: () => void
  onDemo: () => void
  onList: () => void
  /** Opens the demo job and a form to practise on. */
  onPractice: () => void
  onBook: () => void
}

/** What stands here while no job is open: at first the whole round, and what to see to before a test. */
export function FirstRun({ first, units, onUnits, onStart, onDemo, onList, onPractice, onBook }: Props) {
  const [any, setAny] = useState(false)
  useEffect(() => {
    void listJobs().then((jobs) => setAny(jobs.length > 0))
  }, [])
  const steps = [
    [say`Type`, say`the pressures and flows of a test, and what the building measures.`],
    [say`See`, say`the figures, each with its uncertainty, its working and the limit it is compared with.`],
    [say`Map`, say`a web form once: say which figure goes into which control.`],
    [say`Fill in`, say`the form after you have looked at the plan. Submitting stays with you.`],
    [say`Find again`, say`every entry in the book: what was typed, where, and what the page kept.`],
  ] as const
  return (
    <main class="first">
      <h1>
        <Icon name="mark" /> {first ? say`From readings to a record` : say`No job is open`}
      </h1>
      {!first && (
        <p>{any ? say`Open a job, or start one for the next building.` : say`Start a job for the next building.`}</p>
      )}
      {first && <h2>{say`Before the first test`}</h2>}
      {first && <ShortCautions ducts />}
      {first && <p class="q">{say`Everything stays on this machine.`}</p>}
      {first && (
        <label class="units">
          {say`Units to type in`}
          <select
            class="in"
            value={units.flow}
            onChange={({ currentTarget: { value } }) => {
              const chosen = unitChoices.find(({ flow }) => flow === value)
              if (chosen) onUnits(chosen)
            }}
          >
            {unitChoices.map((one) => (
              <option key={one.flow} value={one.flow}>
                {[flowWords[one.flow], temperatureWords[one.temperature], one.length].join(', ')}
              </option>
            ))}
          </select>
        </label>
      )}
      {first && (
        <details class="how">
          <summary class="link">{say`How it works`}</summary>
          <ol class="steps">
            {steps.map(([word, rest]) => (
              <li key={word}>
                <b>{word}</b> {rest}
              </li>
            ))}
          </ol>
        </details>
      )}
      <div class="row begin">
        <button type="button" class="b first" onClick={onStart}>
          {say`Start a job`}
        </button>
        {any && (
          <button type="button" class="b" onClick={onList}>
            {say`Open a job`}
          </button>
        )}
        <button type="button" class="b" onClick={onDemo}>
          {say`Open the demo job`}
        </button>
        <button type="button" class="b" onClick={onPractice}>
          {say`Practise on a form`}
        </button>
        <button type="button" class="b" onClick={onBook}>
          {say`Open book`}
        </button>
      </div>
    </main>
  )
}
