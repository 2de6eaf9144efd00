import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks'
import {
  getJob,
  getSettings,
  listDeletedJobs,
  listDevices,
  saveJob,
  saveSettings,
  subscribe,
} from '../../book/store.ts'
import type { Settings } from '../../book/schema.ts'
import type { Device, Job } from '../../job/schema.ts'
import { createKeeper } from './keep.ts'

export interface Undo {
  text: string
  undo: () => void
}

/** What the calculator holds in memory, in step with the book. */
export interface Held {
  /** False until the book was read. */
  ready: boolean
  settings: Settings | undefined
  job: Job | undefined
  test: string
  devices: Device[]
  /** When the last keystroke reached the book, as written; empty before the first. */
  kept: string
  /** Why something could not be kept or read, with what to do. */
  trouble: string
  undo: Undo | undefined
  editJob: (change: (job: Job) => Job) => void
  /** Takes a job of the book in hand, or none. */
  show: (job: Job | undefined, test?: string) => void
  /** Opens a test of the job in hand. */
  openTest: (id: string) => void
  offerUndo: (text: string, undo: () => void) => void
  dropUndo: () => void
}

const clock = (): string => new Date().toLocaleTimeString([], { hour: '2-digit', minute: '2-digit', hour12: false })

const wording = (error: unknown): string => (error instanceof Error ? error.message : String(error))

/** Opens the book where it was left, keeps every change, and follows what other open views change. */
export function useDesk(): Held {
  const [ready, setReady] = useState(false)
  const [settings, setSettings] = useState<Settings>()
  const [job, setJob] = useState<Job>()
  const [test, setTest] = useState('')
  const [devices, setDevices] = useState<Device[]>([])
  const [kept, setKept] = useState('')
  const [trouble, setTrouble] = useState('')
  const [undo, setUndo] = useState<Undo>()

  // The newest job, for changes that follow one another before the next render.
  const latest = useRef<Job | undefined>(undefined)
  const stamp = useRef('')
  const busy = useRef(0)

  const keeper = useMemo(
    () =>
      createKeeper<Job>({
        id: (value) => value.id,
        save: async (value) => {
          busy.current += 1
          try {
            stamp.current = (await saveJob(value)).updated
          } finally {
            busy.current -= 1
          }
        },
        onKept: () => {
          setKept(clock())
          setTrouble('')
        },
        onFailed: (error) => setTrouble(`Not kept: ${wording(error)}`),
      }),
    [],
  )

  const put = useCallback((value: Job | undefined) => {
    latest.current = value
    setJob(value)
  }, [])

  const openTest = useCallback((id: string) => {
    setTest(id)
    saveSettings({ current: { job: latest.current?.id ?? '', test: id } }).catch((error: unknown) =>
      setTrouble(`Which job is open was not kept: ${wording(error)}`),
    )
  }, [])

  const show = useCallback(
    (next: Job | undefined, id?: string) => {
      const open = next?.tests.some((one) => one.id === id) ? id! : (next?.tests.at(-1)?.id ?? '')
      put(next)
      openTest(open)
    },
    [put, openTest],
  )

  const editJob = useCallback(
    (change: (value: Job) => Job) => {
      if (!latest.current) return
      const next = change(latest.current)
      if (next === latest.current) return
      put(next)
      keeper.keep(next)
    },
    [put, keeper],
  )

  useEffect(() => {
    const leaving = new AbortController()
    /** A job deleted in another view is laid aside here too. */
    const layAside = async (id: string) => {
      const gone = await listDeletedJobs()
      if (latest.current?.id === id && gone.some(({ job: one }) => one.id === id)) show(undefined)
    }
    const open = async () => {
      const [found, owned] = await Promise.all([getSettings(), listDevices()])
      setSettings(found)
      setDevices(owned)
      const current = found.current.job ? await getJob(found.current.job) : undefined
      put(current)
      setTest(
        current?.tests.some((one) => one.id === found.current.test)
          ? found.current.test
          : (current?.tests.at(-1)?.id ?? ''),
      )
      setReady(true)
      if (current) await layAside(current.id)
    }
    open().catch((error: unknown) => {
      setTrouble(`The book could not be opened: ${wording(error)} Close other windows of this extension and try again.`)
    })

    // Only what another view changed is read back: own keystrokes are newer than the book.
    const follow = async (id: string | number | undefined) => {
      const mine = latest.current
      if (!mine || (id !== undefined && id !== mine.id)) return
      const found = await getJob(mine.id)
      // While own changes are on their way to the book, they are the newer ones.
      if (!found || busy.current > 0 || latest.current !== mine) return
      if (found.updated !== stamp.current && found.updated !== mine.updated) put(found)
      else await layAside(mine.id)
    }
    subscribe((notice, own) => {
      if (notice.what === 'jobs' && !own) follow(notice.id).catch(() => undefined)
      if (notice.what === 'devices') listDevices().then(setDevices, () => undefined)
      if (notice.what === 'settings') getSettings().then(setSettings, () => undefined)
    }, leaving.signal)
    addEventListener('pagehide', () => keeper.flush(), { signal: leaving.signal })
    document.addEventListener('visibilitychange', () => document.hidden && keeper.flush(), { signal: leaving.signal })
    return () => {
      keeper.flush()
      leaving.abort()
    }
  }, [keeper, put, show])

  const offerUndo = useCallback((text: string, back: () => void) => setUndo({ text, undo: back }), [])
  const dropUndo = useCallback(() => setUndo(undefined), [])

  return { ready, settings, job, test, devices, kept, trouble, undo, editJob, show, openTest, offerUndo, dropUndo }
}
