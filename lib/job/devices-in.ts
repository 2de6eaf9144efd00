/** Which devices of the book a test names. */
import type { TypedSheet } from './schema.ts'

/** Ids; of several fans that of each. */
export const devicesIn = ({ reading, device, fans = [] }: TypedSheet): string[] =>
  (reading === 'fans' ? fans.map((fan) => fan.device) : [device]).filter((id) => id !== '')
