/** Writing into controls that plain forms have none of; beside `index.ts`, which is in every page that is filled. */
import { writeCalendar } from './calendar/write.ts'
import { writeCombobox } from './combobox/write.ts'
import { writeDateBoxes } from './date-boxes/write.ts'
import { writeDateSections } from './date-sections/write.ts'
import { writeListbox } from './listbox/write.ts'
import { writeSlider } from './slider/write.ts'
import { writeSpinbutton } from './spinbutton/write.ts'
import { writeRichText } from './rich-text/write.ts'
import type { ExtraKind } from './extra-kinds.ts'
import type { Writer } from './writing/writer.ts'

declare global {
  /** Set in the extension's isolated world; the page cannot see it. */
  var gapsumWriters: Record<ExtraKind, Writer> | undefined
}

/** Lets `write` reach the writers of these kinds. */
export function offerExtra(): void {
  globalThis.gapsumWriters = {
    calendar: writeCalendar,
    combobox: writeCombobox,
    'date-boxes': writeDateBoxes,
    'date-sections': writeDateSections,
    listbox: writeListbox,
    slider: writeSlider,
    spinbutton: writeSpinbutton,
    'rich-text': writeRichText,
  }
}
