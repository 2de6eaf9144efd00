import { useContext } from 'preact/hooks'
import { Icon } from '../icons.tsx'
import { ViewContext } from './context.ts'
import { later } from './later.tsx'
import { Section } from './section.tsx'
import { setupSummary } from './setup-summary.ts'
import { useBench } from './use-context.ts'
import { say } from '../../words/say.ts'

const SetupFields = later(async () => (await import('./setup-fields.tsx')).SetupFields)

/** The set-up of the open test, closed to a line until it is asked for. */
export function Setup() {
  const { test, found } = useBench()
  const open = useContext(ViewContext).isOpen('setup')
  // A finding stands beside its cell, which nobody sees in a closed section.
  const hidden = !open && [...found.keys()].some((path) => !/^(points|baseline|building\.(?!elevation))/.test(path))
  return (
    <Section
      id="setup"
      title={say`Set-up`}
      plain
      summary={
        hidden ? (
          <span class="finding">
            <Icon name="doubtful" /> {say`Something inside is to be corrected: open to see it.`}
          </span>
        ) : (
          setupSummary(test)
        )
      }
    >
      <SetupFields />
    </Section>
  )
}
