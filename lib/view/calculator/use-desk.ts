import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { listDevices } from '../../book/devices.ts'
import { getJob, listDeletedJobs, saveJob, saveJobSince } from '../../book/jobs.ts'
import { subscribe } from '../../book/notice.ts'
import { getSettings, saveSettings } from '../../book/settings.ts'
import type { Settings } from '../../book/schema.ts'
import type { Device, Job } from '../../job/schema.ts'
import { typedWithComma } from '../../job/units.ts'
import { writesComma } from '../../units/comma.ts'
import { language, say } from '../../words/say.ts'
import { createKeeper } from './keep.ts'

/** Read only when two windows have typed at the same time. */
const together = () => import('./in-two-windows.ts')

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
  /** Changes settings, shown at once. */
  set: (patch: Partial<Settings>) => void
  offerUndo: (text: string, undo: () => void) => void
  dropUndo: () => void
}

const clock = (): string =>
  new Date().toLocaleTimeString(language(), { hour: '2-digit', minute: '2-digit', hour12: false })

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
  /** Of each job, the version that this view and the book last had in common. */
  const common = useRef(new Map<string, Job>())

  const editor = useRef<Held['editJob']>(() => {})

  const put = useCallback((value: Job | undefined) => {
    latest.current = value
    setJob(value)
  }, [])

  const keeper = useMemo(() => {
    /** Keeps a job; what another window has kept meanwhile is taken in, not written over. */
    const save = async (value: Job): Promise<void> => {
      let mine = value
      for (;;) {
        const base = common.current.get(mine.id)
        const answer = await saveJobSince(mine, base?.updated ?? mine.updated)
        if ('kept' in answer) {
          common.current.set(mine.id, answer.kept)
          return
        }
        const { mergeJobs, clashWords, takeTheirs } = await together()
        const sent = mine
        const { job: merged, clashes } = mergeJobs(base ?? answer.other, sent, answer.other)
        common.current.set(mine.id, answer.other)
        // What was typed since goes on top.
        const onTop = (newer: Job) => (newer === sent ? merged : mergeJobs(sent, newer, merged).job)
        made.revise(mine.id, onTop)
        if (latest.current?.id === mine.id) put(onTop(latest.current))
        if (clashes.length > 0) {
          const undoIt = () => editor.current((now) => takeTheirs(now, clashes))
          setUndo({ text: clashWords(merged, clashes), undo: undoIt })
        }
        mine = merged
      }
    }
    const made = createKeeper<Job>({
      id: (value) => value.id,
      save,
      saveAtOnce: async (value) => common.current.set(value.id, await saveJob(value)),
      onKept: () => {
        setKept(clock())
        setTrouble('')
      },
      onFailed: (error) => setTrouble(say`Not kept: ${wording(error)}`),
    })
    return made
  }, [put])

  const openTest = useCallback((id: string) => {
    setTest(id)
    saveSettings({ current: { job: latest.current?.id ?? '', test: id } }).catch((error: unknown) =>
      setTrouble(say`Which job is open was not kept: ${wording(error)}`),
    )
  }, [])

  /** Own changes of settings that the book does not hold yet: what it holds meanwhile is older. */
  const setting = useRef(0)
  const set = useCallback((patch: Partial<Settings>) => {
    setSettings((now) => now && { ...now, ...patch })
    setting.current += 1
    saveSettings(patch)
      .catch((error: unknown) => setTrouble(say`The setting was not kept: ${wording(error)}`))
      .finally(() => {
        setting.current -= 1
      })
  }, [])

  const show = useCallback(
    (next: Job | undefined, id?: string) => {
      const open = next?.tests.some((one) => one.id === id) ? id! : (next?.tests.at(-1)?.id ?? '')
      if (next) common.current.set(next.id, next)
      put(next)
      openTest(open)
    },
    [put, openTest],
  )

  const editJob = useCallback(
    (change: (value: Job) => Job) => {
      if (!latest.current) return
      const changed = change(latest.current)
      if (changed === latest.current) return
      // Once something is changed it is a job of its own.
      const { copied: _, ...own } = changed
      const next = writesComma() ? typedWithComma(own) : own
      put(next)
      keeper.keep(next)
    },
    [put, keeper],
  )

  editor.current = editJob

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
      if (current) common.current.set(current.id, current)
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
      setTrouble(
        say`The book could not be opened: ${wording(error)} Close other windows of this extension and try again.`,
      )
    })

    // Only what another view changed is read back: own keystrokes are newer than the book.
    const follow = async (id: string | number | undefined) => {
      const mine = latest.current
      if (!mine || (id !== undefined && id !== mine.id)) return
      const found = await getJob(mine.id)
      // Own changes on their way to the book meet what is there when they arrive.
      if (!found || keeper.busy() || latest.current !== mine) return
      if (found.updated !== common.current.get(mine.id)?.updated) {
        common.current.set(found.id, found)
        put(found)
      } else await layAside(mine.id)
    }
    subscribe((notice, own) => {
      if (notice.what === 'jobs' && !own) follow(notice.id).catch(() => undefined)
      if (notice.what === 'devices') listDevices().then(setDevices, () => undefined)
      if (notice.what === 'settings' && setting.current === 0)
        getSettings().then(
          (found) => setting.current === 0 && setSettings(found),
          () => undefined,
        )
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

  return { ready, settings, job, test, devices, kept, trouble, undo, editJob, set, show, openTest, offerUndo, dropUndo }
}
