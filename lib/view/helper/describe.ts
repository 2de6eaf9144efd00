import { cluesOf, optionsOf } from '../../form/clues.ts'
import type { Control } from '../../form/controls.ts'
import { dateKinds, numberKinds, optionKinds, proseKinds, severalKinds, tickKinds } from '../../form/kinds.ts'
import type { Material } from '../../form/material.ts'
import type { Source } from '../../form/schema.ts'
import { sourceWords } from '../../form/text.ts'

/** What the control is called here; a page may give it no name at all. */
export function titleOf(control: Control): string {
  return control.name || `${control.kind} control ${control.position + 1}, without a name`
}

/** By what the control will be known again, and what it takes, in two sentences. */
export function howFound(control: Control): string {
  const clues = cluesOf(control)
  const ways = [
    clues.name && 'its label',
    clues.section && `the heading “${clues.section}”`,
    Object.keys(clues.attributes).length > 0 && 'its own attributes',
    !clues.name && clues.placeholder && 'its placeholder',
  ].filter(Boolean)
  const by = ways.length > 0 ? ways.join(', ').replace(/, ([^,]*)$/, ' and $1') : 'its place on the page only'
  return `Known by ${by}. Takes ${takes(control)}.`
}

function takes(control: Control): string {
  const { element, kind } = control
  const longest = 'maxLength' in element && typeof element.maxLength === 'number' ? element.maxLength : -1
  const length = longest > 0 ? `, ${longest} characters at most` : ''
  if (numberKinds.has(kind)) return `a number${length}`
  if (dateKinds.has(kind)) return 'a date'
  if (tickKinds.has(kind)) return 'a tick'
  if (proseKinds.has(kind)) return `lines of text${length}`
  if (optionKinds.has(kind)) {
    const count = optionsOf(control).filter(Boolean).length
    return severalKinds.has(kind) ? `some of ${count} options` : `one of ${count} options`
  }
  return kind === 'file' ? 'a file' : `text${length}`
}

/** What a control is bound to, in a few words. Fixed text is shown itself. */
export function boundTo(source: Source, material: Material): string {
  if (source.from === 'item') return sourceWords(source, material)
  if (source.from === 'words') return `words with ${sourceWords(source, material)}`
  return source.text ? `“${source.text}”` : 'left empty'
}
