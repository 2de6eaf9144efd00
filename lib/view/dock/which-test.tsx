import type { Proposals } from './use-proposals.ts'
import { say } from '../../words/say.ts'

/** Asked once for the whole page, where it does not say itself of which test it is. */
export function WhichTest({ of }: { of: Pick<Proposals, 'tests' | 'test' | 'answer'> }) {
  const { tests, test, answer } = of
  if (tests.length < 2) return null
  return (
    <div class="note">
      <p id="which-test">{say`The page does not say which test it is about. Which one?`}</p>
      <div class="two-c" role="group" aria-labelledby="which-test">
        {tests.map(({ id, name }) => (
          <button
            key={id}
            type="button"
            class="b low"
            aria-pressed={test === id}
            onClick={() => answer(test === id ? '' : id)}
          >
            {name}
          </button>
        ))}
      </div>
    </div>
  )
}
