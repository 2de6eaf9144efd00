/** Writing into a control, by its kind. */
import type { Control } from '../page/controls.ts'
import { barred, gate } from '../page/gate.ts'
import type { Written } from '../page/image.ts'
import { kept } from '../kept.ts'
import { lockableKinds } from '../kind-traits.ts'
import type { ControlKind } from '../schema.ts'
import { writeCheckbox } from './checkbox/write.ts'
import { writeChips } from './chips/write.ts'
import { writeDate } from './date/write.ts'
import { writeDateTime } from './date-time/write.ts'
import { writeFile } from './file/write.ts'
import { withoutSubmitting } from './writing/guard.ts'
import { unseenBecause } from '../page/seen.ts'
import { reveal } from './writing/reveal.ts'
import { writeMonth } from './month/write.ts'
import { writeMultiple } from './multiple/write.ts'
import { writeNumber } from './number/write.ts'
import { writeRadio } from './radio/write.ts'
import { isExtra, type ExtraKind } from './extra-kinds.ts'
import { writeSelect } from './select/write.ts'
import { writeText } from './text/write.ts'
import { writeTextarea } from './textarea/write.ts'
import { writeTime } from './time/write.ts'
import { writeToggle } from './toggle/write.ts'
import type { Writer } from './writing/writer.ts'
import { say } from '../../words/say.ts'

const writers: Record<Exclude<ControlKind, ExtraKind>, Writer> = {
  text: writeText,
  number: writeNumber,
  date: writeDate,
  time: writeTime,
  'date-time': writeDateTime,
  month: writeMonth,
  textarea: writeTextarea,
  select: writeSelect,
  multiple: writeMultiple,
  radio: writeRadio,
  checkbox: writeCheckbox,
  toggle: writeToggle,
  chips: writeChips,
  file: writeFile,
}

/** Writes the text, or leaves the control alone and says why. `exact`: nothing else stays beside the text. */
export async function write(control: Control, text: string, file?: File, exact = false): Promise<Written> {
  if (control.far) return control.far.write(text)
  const { element, kind } = control
  const why = barred(element)
  if (why !== undefined) return { reason: why }
  const writer = isExtra(kind) ? kept('gapsumWriters')?.[kind] : writers[kind]
  if (!writer) return { reason: say`is of another kind than when it was mapped: open the plan anew from the toolbar` }
  if (lockableKinds.has(kind) && (element as HTMLInputElement).readOnly) return { reason: say`can only be read` }
  try {
    const unseen = await reveal(control)
    if (unseen !== undefined)
      return { reason: say`cannot be seen on the page now (${unseen}), so nothing was typed into it` }
    // While it was waited for.
    for (const each of control.elements) gate(each)
    globalThis.gapsumUnseen = unseenBecause
    const { result, held } = await withoutSubmitting(element.ownerDocument, () => writer(control, text, file, exact))
    return { reason: result, held }
  } catch (error) {
    return { reason: say`could not be written: ${error instanceof Error ? error.message : String(error)}` }
  }
}
