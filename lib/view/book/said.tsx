import { useCallback, useState } from 'preact/hooks'
import { wording } from './wording.ts'
import { say } from '../../words/say.ts'

export type Told = { text: string; bad?: boolean; action?: string; act?: () => void }

/** What was just done, said in a line, perhaps with a way back; failures too. */
export function useSaid() {
  const [said, setSaid] = useState<Told>({ text: '' })

  const run = useCallback((work: () => Promise<unknown>, then?: () => void) => {
    setSaid({ text: '' })
    work().then(
      () => then?.(),
      (error: unknown) => setSaid({ text: say`Not done: ${wording(error)}`, bad: true }),
    )
  }, [])

  const tell = useCallback(
    (text: string, action?: string, act?: () => Promise<unknown>) =>
      setSaid({ text, ...(action && act && { action, act: () => run(act) }) }),
    [run],
  )
  return { said, tell, run }
}

export function Said({ said }: { said: Told }) {
  return (
    <div class={said.bad ? 'said bad' : 'said'} role="status">
      {said.text && <span>{said.text}</span>}
      {said.action && (
        <button type="button" class="b low" onClick={said.act}>
          {said.action}
        </button>
      )}
    </div>
  )
}
