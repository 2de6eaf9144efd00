/**
 * What reads a test of several fans, once it is there: most tests have one device, and neither the popup nor the widget has
 * to load it for them. Where jobs of any kind are read, `with-fans.ts` is imported beside.
 */
import type { CheckResult } from '../reduce/report.ts'
import type { Sheet } from '../sheet/schema.ts'
import type { Points, Reader } from './read.ts'
import type { Device, Test } from './schema.ts'

export interface SeveralFans {
  read: (reader: Reader, test: Test, devices: readonly Device[], air: Sheet['air']) => Points
  checks: (test: Test, devices: readonly Device[]) => CheckResult[]
}

let known: SeveralFans | undefined

export const knowSeveralFans = (fans: SeveralFans): void => {
  known = fans
}

export const knowsSeveralFans = (): boolean => known !== undefined

/** @throws Error where `with-fans.ts` was not loaded: figures that are missing without a word would be worse. */
export function severalFans(): SeveralFans {
  if (!known) throw new Error('What reads several fans is not loaded: import lib/job/with-fans.ts.')
  return known
}
