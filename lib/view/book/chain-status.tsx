import { useCallback, useEffect, useRef, useState } from 'preact/hooks'
import { whatChainShows, whatToDo, type Verdict } from '../../book/chain.ts'
import { countEntries } from '../../book/entries.ts'
import { renewRows } from '../../book/indexing.ts'
import { origins, type TakenIn } from '../../book/origin.ts'
import { listOthers } from '../../book/others.ts'
import { verifyBook, type Verified } from '../../book/verify.ts'
import { subscribe } from '../../book/notice.ts'
import { PageIcon } from '../parts/page-icons.tsx'
import { afterList } from './after-list.ts'
import { few, findingWords } from './finding-words.ts'
import { hashOf } from './route.ts'
import { useDismiss } from './use-dismiss.ts'
import { bookCount, count, dayAndYear, grouped, time, wording } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** A book of up to so many entries is checked when it opens; a longer one when asked. */
const atOnce = 3000

/** A book beside, with what its check found; nothing where it is long and was not asked for. */
type OtherChecked = { key: string; name: string; count: number; hash: string; found?: Verified | undefined }

type State =
  | { is: 'idle'; entries: number }
  | { is: 'checking'; done: number; entries: number }
  | { is: 'checked'; verdict: Verdict; found: Verified; takenIn: TakenIn[]; others: OtherChecked[]; at: string }
  | { is: 'failed'; trouble: string }

/** Whether the chain of the book fits, and what that means. */
export function ChainStatus() {
  const [state, setState] = useState<State>()
  const running = useRef(0)
  const part = useDismiss()

  // What was made again is told until the book is closed: a second check finds nothing any more.
  const corrected = useRef<Pick<Verified, 'rows' | 'words'>>({ rows: [], words: [] })

  // A check goes on from the one before, and one of a book beside holds as long as nothing is added to it.
  const before = useRef<Verdict>(undefined)
  const known = useRef<OtherChecked[]>([])

  const run = useCallback(async (thorough: boolean) => {
    const turn = ++running.current
    const tell = (next: State) => turn === running.current && setState(next)
    try {
      const entries = await countEntries()
      let told = 0
      const onProgress = (done: number) => {
        if (Date.now() - told < 100) return
        told = Date.now()
        tell({ is: 'checking', done, entries })
      }
      const found = await verifyBook(thorough, onProgress, undefined, before.current)
      before.current = found.chain.ok ? found.chain : undefined
      known.current = await checkOthers(thorough, known.current)
      const { rows, words } = corrected.current
      corrected.current = { rows: [...rows, ...found.rows], words: [...words, ...found.words] }
      const { takenIn } = await origins()
      const at = new Date().toISOString()
      const all = { ...found, ...corrected.current }
      tell({ is: 'checked', verdict: found.chain, found: all, takenIn, others: known.current, at })
    } catch (error) {
      tell({ is: 'failed', trouble: wording(error) })
    }
  }, [])

  useEffect(() => {
    const look = async () => {
      const entries = await countEntries()
      const checked = before.current?.ok ? before.current.count : 0
      if (entries - checked <= atOnce) return run(false)
      setState({ is: 'idle', entries })
      await renewRows()
    }
    // One after another: what is added meanwhile is looked at once, when the one before has ended.
    const stopped = new AbortController()
    let [busy, again] = [false, false]
    const lookAgain = async () => {
      again = true
      if (busy) return
      busy = true
      while (again && !stopped.signal.aborted) {
        again = false
        await look().catch((error: unknown) => setState({ is: 'failed', trouble: wording(error) }))
      }
      busy = false
    }
    const start = setTimeout(() => void lookAgain(), afterList)
    const stop = subscribe((notice) => void (notice.what === 'entries' && lookAgain()))
    return () => {
      stopped.abort()
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
        {state?.is === 'checked' && state.others.map((other) => <OtherWords key={other.key} other={other} />)}
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
      return <Checked verdict={state.verdict} at={state.at} told={countTold(state)} others={state.others} />
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

const toldIn = ({ chain, rows, words, files }: Verified): number =>
  rows.length + words.length + files.length + (chain.ok ? (chain.backwards ?? []).length : 0)

const countTold = ({ found, others }: State & { is: 'checked' }): number =>
  others.reduce((sum, other) => sum + (other.found ? toldIn(other.found) : 0), toldIn(found))

/** Checks the books beside, the long ones only when a person asks. `before`: what is known of them. */
async function checkOthers(thorough: boolean, before: readonly OtherChecked[]): Promise<OtherChecked[]> {
  const all: OtherChecked[] = []
  for (const other of await listOthers()) {
    const { key, name, count: entries, hash } = other
    const same = before.find((one) => one.key === key && one.count === entries && one.hash === hash)?.found
    const check = thorough || (!same && entries <= atOnce)
    all.push({ key, name, count: entries, hash, found: check ? await verifyBook(thorough, undefined, other) : same })
  }
  return all
}

/** What the check of a book beside found. */
function OtherWords({ other: { name, count: entries, found } }: { other: OtherChecked }) {
  if (!found) return <p>{say`${name}, beside yours: ${count(entries, 'entry', 'entries')}, not checked yet.`}</p>
  const { chain } = found
  if (!chain.ok)
    return (
      <p class="st bad">
        <b>{say`${name}, beside yours: ${chain.message}`}</b>{' '}
        {say`Take its file in again, and compare it with one that was written earlier.`}
      </p>
    )
  return (
    <>
      <p>
        {say`${name}, beside yours: chain verified, ${count(chain.count, 'entry', 'entries')}; newest fingerprint `}
        <code title={chain.hash}>{chain.hash.slice(0, 16)}</code>
      </p>
      {findingWords(found).map((sentence) => (
        <p key={sentence} class="st bad">
          {name}: {sentence}
        </p>
      ))}
      {chain.backwards?.[0] && (
        <p class="st doubt">
          {say`${name}: the times run backwards at entry ${chain.backwards[0].entry}. A clock was set back, or the entry was written elsewhere.`}
        </p>
      )}
    </>
  )
}

interface CheckedProps {
  verdict: Verdict
  at: string
  told: number
  others: readonly OtherChecked[]
}

function Checked({ verdict, at, told, others }: CheckedProps) {
  const broken = others.find(({ found }) => found && !found.chain.ok)
  if (!verdict.ok || broken) {
    const where = verdict.ok ? broken?.found?.chain : verdict
    return (
      <span class="st bad">
        <PageIcon name="bad" />
        <span>
          <b>{say`Chain broken`}</b>
          {verdict.ok && broken && say` in ${broken.name}, a book beside yours,`}
          {where && !where.ok && say` at entry ${where.entry}`}
        </span>
      </span>
    )
  }
  if (verdict.count === 0 && others.length === 0) return <span class="q">{say`no entries yet`}</span>
  if (verdict.count === 0)
    return <span class="q">{say`no entries of your own yet; ${bookCount(others.length)} beside`}</span>
  const [first, last] = [dayAndYear(verdict.first), dayAndYear(verdict.last)]
  return (
    <span class="fits">
      <PageIcon name="tick" />
      <span>
        <b>{say`Chain verified`}</b>{' '}
        <span class="q">
          {count(verdict.count, 'entry', 'entries')}, {first === last ? first : say`${first} to ${last}`}
          {others.length > 0 && say`, and ${bookCount(others.length)} beside`}
          {say`, checked at ${time(at)}`}
        </span>
        {told > 0 && <b class="st doubt"> {told === 1 ? say`1 finding` : say`${told} findings`}</b>}
      </span>
    </span>
  )
}
