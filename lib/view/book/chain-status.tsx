import { useCallback, useEffect, useRef, useState } from 'preact/hooks'
import { whatChainShows, whatToDo, type Verdict } from '../../book/chain.ts'
import { countEntries } from '../../book/entries.ts'
import { renewRows } from '../../book/indexing.ts'
import type { TakenIn } from '../../book/origin.ts'
import { origins } from '../../book/origin.ts'
import { verifyBook, type Verified } from '../../book/verify.ts'
import { subscribe } from '../../book/notice.ts'
import { PageIcon } from '../page-icons.tsx'
import { afterList } from './after-list.ts'
import { few, findingWords } from './finding-words.ts'
import { hashOf } from './route.ts'
import { useDismiss } from './use-dismiss.ts'
import { count, dayAndYear, grouped, time, wording } from './wording.ts'
import { say } from '../../words/say.ts'

/** A book of up to so many entries is checked when it opens; a longer one when asked. */
const atOnce = 3000

type State =
  | { is: 'idle'; entries: number }
  | { is: 'checking'; done: number; entries: number }
  | { is: 'checked'; verdict: Verdict; found: Verified; takenIn: TakenIn[]; at: string }
  | { is: 'failed'; trouble: string }

/** Whether the chain of the book fits, and what that means. */
export function ChainStatus() {
  const [state, setState] = useState<State>()
  const running = useRef(0)
  const part = useDismiss()

  // What was made again is told until the book is closed: a second check finds nothing any more.
  const corrected = useRef<Pick<Verified, 'rows' | 'words'>>({ rows: [], words: [] })

  const run = useCallback(async (thorough: boolean) => {
    const turn = ++running.current
    const tell = (next: State) => turn === running.current && setState(next)
    try {
      const entries = await countEntries()
      let told = 0
      const found = await verifyBook(thorough, (done) => {
        if (Date.now() - told < 100) return
        told = Date.now()
        tell({ is: 'checking', done, entries })
      })
      const { rows, words } = corrected.current
      corrected.current = { rows: [...rows, ...found.rows], words: [...words, ...found.words] }
      const { takenIn } = await origins()
      const at = new Date().toISOString()
      tell({ is: 'checked', verdict: found.chain, found: { ...found, ...corrected.current }, takenIn, at })
    } catch (error) {
      tell({ is: 'failed', trouble: wording(error) })
    }
  }, [])

  useEffect(() => {
    const look = async () => {
      const entries = await countEntries()
      if (entries <= atOnce) return run(false)
      setState({ is: 'idle', entries })
      await renewRows()
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
        <PageIcon name="chain" />
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
        {state?.is === 'checked' && <Findings found={state.found} takenIn={state.takenIn} />}
        <p>{whatChainShows}</p>
        {state?.is === 'checked' && state.verdict.ok && state.verdict.hash && (
          <p>
            {say`Newest fingerprint: `}
            <code>{state.verdict.hash}</code>
          </p>
        )}
        <button type="button" class="b low" onClick={() => void run(true)} disabled={state?.is === 'checking'}>
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
      return <Checked verdict={state.verdict} at={state.at} told={countTold(state.found)} />
  }
}

/** What a check found beside the chain itself. */
function Findings({ found: { chain, rows, words, files }, takenIn }: { found: Verified; takenIn: TakenIn[] }) {
  const backwards = chain.ok ? (chain.backwards ?? []) : []
  return (
    <>
      {backwards.slice(0, few).map(({ entry, at, before }) => (
        <p key={`time ${entry}`} class="st doubt">
          {say`Entry ${entry} bears the time ${dayAndYear(at)}, ${time(at)}, which is before that of the entry before it, ${dayAndYear(before)}, ${time(before)}. A clock was set back, or the entry was written elsewhere.`}
        </p>
      ))}
      {backwards.length > few && <p class="st doubt">{say`${backwards.length - few} more times run backwards.`}</p>}
      {findingWords({ rows, words, files }).map((sentence) => (
        <p key={sentence} class="st bad">
          {sentence}
        </p>
      ))}
      {takenIn.slice(-few).map(({ from, to, at, file }) => (
        <p key={`from ${from}`}>
          {from === to
            ? say`Entry ${from} was taken in from ${file || say`a file`} on ${dayAndYear(at)}: it was not typed here.`
            : say`Entries ${from} to ${to} were taken in from ${file || say`a file`} on ${dayAndYear(at)}: they were not typed here.`}
        </p>
      ))}
    </>
  )
}

const countTold = ({ chain, rows, words, files }: Verified): number =>
  rows.length + words.length + files.length + (chain.ok ? (chain.backwards ?? []).length : 0)

function Checked({ verdict, at, told }: { verdict: Verdict; at: string; told: number }) {
  if (!verdict.ok) {
    return (
      <span class="st bad">
        <PageIcon name="bad" />
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
      <PageIcon name="tick" />
      <span>
        <b>{say`Chain verified`}</b>{' '}
        <span class="q">
          {count(verdict.count, 'entry', 'entries')}, {first === last ? first : say`${first} to ${last}`}
          {say`, checked at ${time(at)}`}
        </span>
        {told > 0 && <b class="st doubt"> {told === 1 ? say`1 finding` : say`${told} findings`}</b>}
      </span>
    </span>
  )
}
