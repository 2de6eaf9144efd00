import { useEffect, useState } from 'preact/hooks'

/** Milliseconds without a key after which typing rests. */
const rest = 300

/**
 * What `work` comes to, worked out again only when typing rests, so that no key is held up. What was found for another
 * subject is not shown: there the work is done at once.
 */
export function useRested<T>(subject: string, work: () => T, inputs: readonly unknown[]): T | undefined {
  const [last, setLast] = useState<{ subject: string; found: T }>()
  useEffect(() => {
    const timer = setTimeout(() => setLast({ subject, found: work() }), last?.subject === subject ? rest : 0)
    return () => clearTimeout(timer)
  }, [subject, ...inputs])
  return last?.subject === subject ? last.found : undefined
}
