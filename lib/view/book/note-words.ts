import type { Entry } from '../../book/schema.ts'
import { say } from '../../words/say.ts'

export const kindWords: Record<Entry['kind'], string> = {
  fill: say`Fill`,
  undo: say`Put back`,
  'follow-up': say`Follow-up`,
  correction: say`Correction`,
  attachment: say`Attachment`,
  review: say`Review`,
}
