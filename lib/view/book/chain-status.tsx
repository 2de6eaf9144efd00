import { useCallback, useEffect, useRef, useState } from 'preact/hooks'
import { whatChainShows, whatToDo, type Verdict } from '../../book/chain.ts'
import { countEntries, verify } from '../../book/entries.ts'
import { subscribe } from '../../book/notice.ts'
import { Icon } from '../icons.tsx'
import { afterList } from './after-list.ts'
import { hashOf } from './route.ts'
import { useDismiss } from './use-dismiss.ts'
import { count, dayAndYear, grouped, time, wording } from './wording.ts'
import { say } from '../../words/say.ts'

/** A book of up to so many entries is checked when it opens; a longer one when asked. */
const atOnce = 3000

type State =
  | { is: 'idle'; entries: number }
  | { is: 'checking'; done: number; entries: number }
  | { is: 'checked'; verdict: Verdict; at: string }
  | { is: 'failed'; trouble: string }

/** Whether the chain of the book fits, and what that means. */
export function ChainStatus() {
  const [state, setState] = useState<State>()
  const running = useRef(0)
  const part = useDismiss()

  const run = useCallback(async () => {
    const turn = ++running.current
    const tell = (next: State) => turn === running.current && setState(next)
    try {
      const entries = await countEntries()
      let told = 0
      const verdict = await verify((done) => {
        if (Date.now() - told < 100) return
        told = Date.now()
        tell({ is: 'checking', done, entries })
      })
      tell({ is: 'checked', verdict, at: new Date().toISOString() })
    } catch (error) {
      tell({ is: 'failed', trouble: wording(error) })
    }
  }, [])

  useEffect(() => {
    const look = async () => {
      const entries = await countEntries()
      if (entries <= atOnce) await run()
      else setState({ is: 'idle', entries })
    }
    const start = setTimeout(() => lookAgain(), afterList)
    const lookAgain = () => void look().catch((error: unknown) => setState({ is: 'failed', trouble: wording(error) }))
    const stop = subscribe((notice) => notice.what === 'entries' && lookAgain())
    return () => {
      clearTimeout(start)
      stop()
    }
  }, [run])

  return (
    <details class="chain" ref={part}>
      <summary>
        <Icon name="chain" />
        <span role="status">
          <Head state={state} />
        </span>
      </summary>
      <div class="what">
        {state?.is === 'checked' && !state.verdict.ok && (
          <p>
            <b>{state.verdict.message}</b> {whatToDo}{' '}
            <a href={hashOf({ section: 'entries', entry: Math.max(1, state.verdict.entry) })}>
              {say`Show entry ${state.verdict.entry}`}
            </a>
          </p>
        )}
        <p>{whatChainShows}</p>
        {state?.is === 'checked' && state.verdict.ok && state.verdict.hash && (
          <p>
            {say`Newest fingerprint: `}
            <code>{state.verdict.hash}</code>
          </p>
        )}
        <button type="button" class="b low" onClick={() => void run()} disabled={state?.is === 'checking'}>
          {say`Check the chain now`}
        </button>
      </div>
    </details>
  )
}

function Head({ state }: { state: State | undefined }) {
  if (!state) return <span class="q">{say`reading the book`}</span>
  switch (state.is) {
    case 'idle':
      return (
        <>
          <b>{say`Chain not checked yet`}</b> <span class="q">{count(state.entries, 'entry', 'entries')}</span>
        </>
      )
    case 'checking':
      return <span class="q">{say`checking the chain, ${grouped(state.done)} of ${grouped(state.entries)}`}</span>
    case 'failed':
      return <span class="st bad">{say`The book could not be read: ${state.trouble}`}</span>
    case 'checked':
      return <Checked verdict={state.verdict} at={state.at} />
  }
}

function Checked({ verdict, at }: { verdict: Verdict; at: string }) {
  if (!verdict.ok) {
    return (
      <span class="st bad">
        <Icon name="bad" />
        <span>
          <b>{say`Chain broken`}</b>
          {say` at entry ${verdict.entry}`}
        </span>
      </span>
    )
  }
  if (verdict.count === 0) return <span class="q">{say`no entries yet`}</span>
  const [first, last] = [dayAndYear(verdict.first), dayAndYear(verdict.last)]
  return (
    <span class="fits">
      <Icon name="tick" />
      <span>
        <b>{say`Chain verified`}</b>{' '}
        <span class="q">
          {count(verdict.count, 'entry', 'entries')}, {first === last ? first : say`${first} to ${last}`}
          {say`, checked at ${time(at)}`}
        </span>
      </span>
    </span>
  )
}
