import type { Entry } from '../../book/schema.ts'

export const kindWords: Record<Entry['kind'], string> = {
  fill: 'Fill',
  undo: 'Put back',
  'follow-up': 'Follow-up',
  correction: 'Correction',
  attachment: 'Attachment',
  review: 'Review',
}
