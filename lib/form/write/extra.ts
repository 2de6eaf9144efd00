/** Writing into controls that plain forms have none of; beside `index.ts`, which is in every page that is filled. */
import { writeCalendar } from './calendar.ts'
import { writeChips } from './chips.ts'
import { writeCombobox } from './combobox.ts'
import { writeDateBoxes } from './date-boxes.ts'
import { writeDateSections } from './date-sections.ts'
import { writeListbox } from './listbox.ts'
import { writeSlider } from './slider.ts'
import { writeSpinbutton } from './spinbutton.ts'
import { writeRichText } from './rich-text.ts'
import type { ExtraKind } from './extra-kinds.ts'
import type { Writer } from './writer.ts'

declare global {
  /** Set in the extension's isolated world; the page cannot see it. */
  var gapsumWriters: Record<ExtraKind, Writer> | undefined
}

/** Lets `write` reach the writers of these kinds. */
export function offerExtra(): void {
  globalThis.gapsumWriters = {
    calendar: writeCalendar,
    chips: writeChips,
    combobox: writeCombobox,
    'date-boxes': writeDateBoxes,
    'date-sections': writeDateSections,
    listbox: writeListbox,
    slider: writeSlider,
    spinbutton: writeSpinbutton,
    'rich-text': writeRichText,
  }
}
