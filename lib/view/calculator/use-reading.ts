import { useEffect, useMemo, useState } from 'preact/hooks'
import type { Device, Job, Test } from '../../job/schema.ts'
import { knowsSeveralFans } from '../../job/several-fans.ts'
import type { Reading, readingOf } from '../../results/reading.ts'
import { say } from '../../words/say.ts'

type Compute = typeof readingOf

let computing: Compute | undefined

/** Read after the first paint: cells can be typed into before it has arrived. */
async function readCompute(): Promise<Compute> {
  try {
    computing = (await import('../../results/reading.ts')).readingOf
    return computing
  } catch (error) {
    return () => {
      throw error
    }
  }
}

/** Up to so many points are computed within a keystroke. */
const atOnce = 300
/** Beyond, when typing rests. */
const rest = 200

/** What the open test comes to. A long log is computed when typing rests, so that no key is held up. */
export function useReading(
  job: Job | undefined,
  test: Test | undefined,
  devices: readonly Device[],
): Reading | undefined {
  const [read, setRead] = useState(() => computing)
  useEffect(() => {
    if (!read) void readCompute().then((found) => setRead(() => found))
  }, [])
  const several = job?.tests.some(({ sheet }) => sheet.reading === 'fans') ?? false
  const [, readSeveral] = useState(false)
  useEffect(() => {
    if (several && !knowsSeveralFans()) void import('../../job/with-fans.ts').then(() => readSeveral(true))
  }, [several])
  const compute = several && !knowsSeveralFans() ? undefined : read
  const long = (test?.sheet.points.length ?? 0) > atOnce
  const now = useMemo(
    () => (compute && job && test && !long ? safely(compute, job, test, devices) : undefined),
    [compute, job, test, devices, long],
  )
  const [later, setLater] = useState<{ test: string; reading: Reading }>()

  useEffect(() => {
    if (!compute || !job || !test || !long) return
    const work = () => setLater({ test: test.id, reading: safely(compute, job, test, devices) })
    const timer = setTimeout(work, later?.test === test.id ? rest : 0)
    return () => clearTimeout(timer)
  }, [compute, job, test, devices, long])

  if (!test) return undefined
  if (!long) return now ?? pending
  return later?.test === test.id ? later.reading : pending
}

/** A fault in computing must not take the typed readings off the screen. */
function safely(compute: Compute, job: Job, test: Test, devices: readonly Device[]): Reading {
  try {
    return compute(job, test, devices)
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    const waiting = say`The figures could not be computed (${reason}). What you typed is kept; please report this.`
    return { ...pending, waiting }
  }
}

const pending: Reading = {
  found: new Map(),
  unfinished: new Set(),
  brought: [],
  used: undefined,
  mean: '',
  verdict: undefined,
  groups: [],
  lacking: [],
  checks: [],
  counts: { good: 0, doubtful: 0, bad: 0, not: 0 },
  fitted: false,
  basis: '',
  factor: '',
  waiting: say`Computing…`,
}
