import { later } from './later.tsx'
import { Section } from './section.tsx'
import { setupSummary } from './setup-summary.ts'
import { useBench } from './use-context.ts'
import { say } from '../../words/say.ts'

const SetupFields = later(async () => (await import('./setup-fields.tsx')).SetupFields)

const elsewhere = /^(points|baseline|servedArea|building\.(?!elevation))/

/** The set-up of the open test, closed to a line until it is asked for. */
export function Setup() {
  const { test } = useBench()
  return (
    <Section id="setup" title={say`Set-up`} plain summary={setupSummary(test)} holds={(path) => !elsewhere.test(path)}>
      <SetupFields />
    </Section>
  )
}
