/** The words that a procedure has of its own. */
import type { Test } from '../job/schema.ts'

/** ISO 9972 (from memory) calls the air change rate at 50 Pa n50, beside its q_E50: both as it does, or neither. */
export const wordsAfter = (procedure: Test['sheet']['procedure'], text: string): string =>
  procedure === 'iso-9972' ? text.replaceAll('ACH50', 'n50') : text
