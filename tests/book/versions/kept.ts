/** What a released version left behind, written by that version itself. */
import { readFileSync } from 'node:fs'

/** Records by table; of `single`, pairs of key and record. */
export type Kept = Record<string, unknown[]>

export const keptBy = (name: string): Kept =>
  JSON.parse(readFileSync(new URL(`${name}.json`, import.meta.url), 'utf8')) as Kept
