import type { Job } from './schema.ts'
import { say } from '../words/say.ts'

/** How a job is called on screen: its address line. */
export function jobTitle({ building, copied }: Pick<Job, 'building' | 'copied'>): string {
  const street = [building.street.trim(), building.unit.trim()].filter(Boolean).join(' ')
  const title = [street, building.town.trim()].filter(Boolean).join(', ') || say`Job without an address`
  return copied ? say`Copy, not changed yet: ${title}` : title
}
