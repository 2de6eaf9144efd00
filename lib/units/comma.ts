import { language } from '../words/say.ts'
import type { Marks } from './marks.ts'

/** Whether the reader's language writes a decimal comma. */
export const writesComma = (): boolean => new Intl.NumberFormat(language()).format(1.5).includes(',')

/**
 * What is known of the marks of numbers that were typed where a decimal comma may be written: a comma or a point before
 * three digits is asked about, in every window and on every computer.
 */
export const marksIn = ({ decimal }: { decimal?: 'comma' | undefined }): Marks =>
  decimal === 'comma' ? 'both' : undefined
