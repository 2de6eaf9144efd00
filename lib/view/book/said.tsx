import { useCallback, useRef, useState } from 'preact/hooks'
import { wording } from '../parts/wording.ts'
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

  // What is added to the book stays there: a second press before the first is answered must not add it twice.
  const busy = useRef(false)
  /** Does what must be done once, unless it is under way. */
  const once = useCallback(
    (work: () => Promise<unknown>, then?: () => void) => {
      if (busy.current) return
      busy.current = true
      run(
        () =>
          work().finally(() => {
            busy.current = false
          }),
        then,
      )
    },
    [run],
  )

  const tell = useCallback(
    (text: string, action?: string, act?: () => Promise<unknown>) =>
      setSaid({ text, ...(action && act && { action, act: () => run(act) }) }),
    [run],
  )
  return { said, tell, run, once }
}

/** `foot`: it stays at the foot of the window and pushes no list away from under the pointer. */
export function Said({ said, foot = false }: { said: Told; foot?: boolean }) {
  return (
    <div class={`said${said.bad ? ' bad' : ''}${foot ? ' low' : ''}`} role="status">
      {said.text && <span>{said.text}</span>}
      {said.action && (
        <button type="button" class="b low" onClick={said.act}>
          {said.action}
        </button>
      )}
    </div>
  )
}
