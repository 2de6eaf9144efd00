import type { Job } from '../../job/schema.ts'
import { say } from '../../words/say.ts'

/** How a job is called on screen: its address line. */
export function jobTitle({ building }: Pick<Job, 'building'>): string {
  const street = [building.street.trim(), building.unit.trim()].filter(Boolean).join(' ')
  return [street, building.town.trim()].filter(Boolean).join(', ') || say`Job without an address`
}
