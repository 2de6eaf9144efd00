/** Until when records are to be kept, in days. */
import { today } from '../../job/empty.ts'

export const dayLength = 86_400_000

/** So many days before it passes the day is told. Common practice, no source. */
export const keptAhead = 90

/** The last day that is told today. */
export const keptSoon = (): string => today(new Date(Date.now() + keptAhead * dayLength))
