import type { BudgetPart } from '../../reduce/report.ts'
import { Budget } from './budget.tsx'
import { Formula } from './formula.tsx'
import { say } from '../../words/say.ts'
import type { Step } from '../../results/shown.ts'

interface Props {
  /** What is worked out, for the region's name. */
  of: string
  steps: readonly Step[]
  /** Parts of the uncertainty, the largest first. */
  budget?: readonly BudgetPart[]
  note?: string
}

/** How a figure comes about, enough for a reader with a hand calculator. */
export function Working({ of, steps, budget = [], note }: Props) {
  return (
    <div class="wk" role="region" aria-label={say`Working of ${of}`}>
      <ol>
        {steps.map((step, i) => (
          <li key={step.step}>
            <span class="n">{i + 1}</span>
            <div>
              <p class="top">
                <span>{step.step}</span>
                <Formula class="r" text={step.result} />
              </p>
              <p>
                <Formula text={step.formula} />
              </p>
              {step.values && (
                <p class="with">
                  <Formula text={step.values} />
                </p>
              )}
              <p class="src">{step.source}</p>
            </div>
          </li>
        ))}
      </ol>
      {budget.length > 0 && <Budget parts={budget} />}
      {note && <p class="src">{note}</p>}
    </div>
  )
}
