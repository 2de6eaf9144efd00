import { optionsOf } from '../../form/page/clues.ts'
import { cluesOf } from './stand-ins.ts'
import type { Control } from '../../form/page/controls.ts'
import { dateKinds, numberKinds, optionKinds, proseKinds, severalKinds, tickKinds } from '../../form/kind-traits.ts'
import type { Material } from '../../form/material.ts'
import type { Source } from '../../form/schema.ts'
import { sourceWords } from '../../form/fill/text.ts'
import { say, shown } from '../../words/say.ts'

/** What the control is called here; a page may give it no name at all. */
export function titleOf(control: Control): string {
  return control.name || say`${shown(control.kind)} control ${control.position + 1}, without a name`
}

/** By what the control will be known again, and what it takes, in two sentences. */
export function howFound(control: Control): string {
  const clues = cluesOf(control)
  const ways = [
    clues.name && say`its label`,
    clues.section && say`the heading “${clues.section}”`,
    Object.keys(clues.attributes).length > 0 && say`the name that the page gives it`,
    !clues.name && clues.placeholder && say`its placeholder`,
  ].filter((way): way is string => typeof way === 'string' && way !== '')
  const last = ways.pop()
  const by =
    last === undefined || last === ''
      ? say`its place on the page only`
      : ways.length > 0
        ? say`${ways.join(', ')} and ${last}`
        : last
  return say`Known by ${by}. Takes ${takes(control)}.`
}

function takes(control: Control): string {
  const { element, kind } = control
  const longest = 'maxLength' in element && typeof element.maxLength === 'number' ? element.maxLength : -1
  const most = (what: string) => (longest > 0 ? say`${what}, ${longest} characters at most` : what)
  if (numberKinds.has(kind)) return most(say`a number`)
  if (dateKinds.has(kind)) return say`a date`
  if (tickKinds.has(kind)) return say`a tick`
  if (proseKinds.has(kind)) return most(say`lines of text`)
  const count = optionsOf(control).filter(Boolean).length
  if (optionKinds.has(kind) && count > 0)
    return severalKinds.has(kind) ? say`some of ${count} options` : say`one of ${count} options`
  return kind === 'file' ? say`a file` : most(say`text`)
}

/** What a control is bound to, in a few words. Fixed text is shown itself. */
export function boundTo(source: Source, material: Material): string {
  if (source.from === 'item') return sourceWords(source, material)
  if (source.from === 'file') return say`the file ${source.name}`
  if (source.from === 'words') return say`words with ${sourceWords(source, material)}`
  return source.text ? `“${source.text}”` : say`left empty`
}
