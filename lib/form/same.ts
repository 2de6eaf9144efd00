/** Whether two texts in a control mean the same. */
import { numberIn } from '../units/number-in.ts'

export type Sameness = 'same' | 'same number' | 'different'

/** Texts equal but for the space around them are the same; `1,445` and `1445` are the same number. */
export function sameness(a: string, b: string): Sameness {
  const one = a.trim().replaceAll('\r\n', '\n')
  const other = b.trim().replaceAll('\r\n', '\n')
  if (one === other) return 'same'
  // Leading zeros belong to codes, not to numbers: permit 0012 is not permit 12.
  if (/^0\d/.test(one) || /^0\d/.test(other)) return 'different'
  const left = numberIn(one)
  return left !== undefined && Number.isFinite(left) && left === numberIn(other) ? 'same number' : 'different'
}
