import { Formula } from './formula.tsx'

export interface Step {
  step: string
  formula: string
  values: string
  result: string
  source: string
}

interface Props {
  /** What is worked out, for the region's name. */
  of: string
  steps: readonly Step[]
  note?: string
}

/** How a figure comes about, enough for a reader with a hand calculator. */
export function Working({ of, steps, note }: Props) {
  return (
    <div class="wk" role="region" aria-label={`Working of ${of}`}>
      <ol>
        {steps.map((step, i) => (
          <li key={step.step}>
            <span class="n">{i + 1}</span>
            <span>
              <span class="said">{step.step}</span>
              <Formula text={step.formula} />
              {step.values && <Formula text={step.values} />}
            </span>
            <span class="r">{step.result}</span>
            <span class="src">{step.source}</span>
          </li>
        ))}
      </ol>
      {note && <p class="src">{note}</p>}
    </div>
  )
}
