/**
 * What is known of this run of the browser, which clears it when it ends. The popup asks here before it reads, so this
 * file stays small.
 */
import { browser } from '../../browser.ts'

const session = () => (browser as typeof browser | undefined)?.storage?.session

const idName = 'run'

/** What is done once in a run: the copies are compared; what earlier runs wrote is put away. */
export type Once = 'compared' | 'put away'

/** Whether it was done since the browser started; undefined where that is not known. */
export async function done(what: Once): Promise<boolean | undefined> {
  const kept = session()
  return kept && (await kept.get(what))[what] === true
}

export async function noteDone(what: Once): Promise<void> {
  await session()?.set({ [what]: true })
}

/** One page or worker at a time. */
export const alone = <T>(what: string, work: () => Promise<T>): Promise<T> =>
  navigator.locks ? navigator.locks.request(`gapsum ${what}`, work) : work()

/** A random name of this run, the same in all pages and workers; empty where a browser keeps nothing for a run. */
export async function runId(): Promise<string> {
  const kept = session()
  if (!kept) return ''
  return alone('run', async () => {
    const known = (await kept.get(idName))[idName]
    if (typeof known === 'string') return known
    const drawn = crypto.randomUUID().slice(0, 18)
    await kept.set({ [idName]: drawn })
    return drawn
  })
}
