import {
  endShape,
  frameShape,
  mapShape,
  marksShape,
  pickedShape,
  planShape,
  writeShape,
} from '../lib/messages/message-shapes.ts'
import type { Shape } from '../lib/messages/shape.ts'

/** Every message that the helper hears. */
export const toHelperShape: Shape = [
  'any',
  mapShape,
  planShape,
  frameShape,
  writeShape,
  marksShape,
  pickedShape,
  endShape,
]
