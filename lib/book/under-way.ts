import type { OpenFill } from './schema.ts'

/** A fill takes seconds; one without a new line for so long has lost its page. */
const patience = 5 * 60_000

/** Says of each open fill whether it may still run: its tab is there, and it wrote something lately. */
export function underWayIn(tabs: ReadonlySet<number>, now: Date = new Date()): (open: OpenFill) => boolean {
  return ({ tab, touched }) =>
    (tab === undefined || tabs.has(tab)) && now.getTime() - new Date(touched).getTime() < patience
}

/** Says of each open fill whether it wrote something since: the start of the browser takes a while to be noted. */
export const begunSince =
  (from: Date) =>
  ({ touched }: OpenFill): boolean =>
    new Date(touched) >= from
