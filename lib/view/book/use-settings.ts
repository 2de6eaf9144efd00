import canonicalize from 'canonicalize'
import { useCallback, useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { Settings } from '../../book/schema.ts'
import { getSettings, saveSettings } from '../../book/settings.ts'
import { dropForm, keepForm, readForm } from './form-draft.ts'
import { useLive } from '../parts/use-live.ts'

const mark = (name: string, value: unknown): string => `${name} ${canonicalize(value)}`

/** Under which the settings are kept that the book has not answered for. */
const form = 'settings'

let takenUp: Promise<void> | undefined

/** Saves what a page before this one no longer could. What does not fit is left out. */
async function takeUp(): Promise<void> {
  const pending = await readForm(form)
  if (!pending) return
  await saveSettings(pending).catch((error: unknown) => console.error('What was set last was not kept.', error))
  dropForm(form)
}

async function read(): Promise<Settings> {
  await (takenUp ??= takeUp())
  return getSettings()
}

/**
 * The settings, changed at once: what the book answers is older than what was typed since. A setting that another view
 * changes is taken from the book.
 */
export function useSettings(): {
  settings: Settings | undefined
  trouble: string
  /** Changes settings; `patch` is told what stands here now. */
  set: (patch: (now: Settings) => Partial<Settings>) => Promise<unknown>
} {
  const { value: kept, trouble } = useLive(read, ['settings'])
  const [settings, show] = useState<Settings>()
  const latest = useRef<Settings | undefined>(undefined)
  // Whatever was set here comes back from the book once, perhaps late.
  const own = useRef(new Set<string>())
  const unsaved = useRef<Partial<Settings>>({})

  useLayoutEffect(() => {
    if (!kept) return
    const others = Object.entries(kept).filter(([name, value]) => !own.current.has(mark(name, value)))
    latest.current = { ...kept, ...latest.current, ...Object.fromEntries(others) }
    show(latest.current)
  }, [kept])

  const set = useCallback(async (patch: (now: Settings) => Partial<Settings>) => {
    if (!latest.current) return
    const changed = patch(latest.current)
    for (const [name, value] of Object.entries(changed)) own.current.add(mark(name, value))
    latest.current = { ...latest.current, ...changed }
    show(latest.current)
    const pending = (unsaved.current = { ...unsaved.current, ...changed })
    // Sent at once: a page that is loaded anew right after a key does not wait for the book.
    keepForm(form, pending)
    await saveSettings(changed)
    if (unsaved.current !== pending) return
    unsaved.current = {}
    dropForm(form)
  }, [])
  return { settings, trouble, set }
}
