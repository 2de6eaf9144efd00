import { useCallback, useEffect, useRef, useState } from 'preact/hooks'
import { subscribe, type Notice } from '../../book/notice.ts'
import { wording } from './wording.ts'

export type Live<T> = { value: T | undefined; trouble: string; loading: boolean; reload: () => void }

/** What `load` gives, read again when something of `follows` changes in any open view, or when `key` changes. */
export function useLive<T>(
  load: (signal: AbortSignal) => Promise<T>,
  follows: readonly Notice['what'][],
  key = '',
): Live<T> {
  const [value, setValue] = useState<T>()
  const [trouble, setTrouble] = useState('')
  const [loading, setLoading] = useState(true)
  const latest = useRef(load)
  latest.current = load
  const running = useRef<AbortController | undefined>(undefined)

  const reload = useCallback(() => {
    running.current?.abort()
    const { signal } = (running.current = new AbortController())
    setLoading(true)
    const read = async () => {
      try {
        const loaded = await latest.current(signal)
        if (signal.aborted) return
        setValue(() => loaded)
        setTrouble('')
      } catch (error) {
        if (!signal.aborted) setTrouble(wording(error))
      }
      if (!signal.aborted) setLoading(false)
    }
    void read()
  }, [])

  useEffect(reload, [key, reload])
  useEffect(
    () => subscribe((notice) => follows.includes(notice.what) && reload()),
    // `follows` is written anew at each call, always with the same content.
    [reload],
  )
  useEffect(() => () => running.current?.abort(), [])
  return { value, trouble, loading, reload }
}
