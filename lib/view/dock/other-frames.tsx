import { useShell } from './shell.ts'
import { say } from '../../words/say.ts'

/** Says which frames of the page cannot be seen, and offers to ask for them, one origin at a time. */
export function OtherFrames({ origins }: { origins: readonly string[] }) {
  const { tell } = useShell()
  return (
    <>
      {origins.map((origin) => (
        <p class="note" key={origin}>
          {say`Part of this page is a frame of ${origin}, which Gapsum cannot see.`}{' '}
          <button type="button" class="b low" onClick={() => tell({ type: 'ask-frame', origin })}>
            {say`Ask to see it`}
          </button>
        </p>
      ))}
    </>
  )
}
