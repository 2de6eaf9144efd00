/** Saving a filled form as new bytes, and reading every field back from them. */
import { say } from '../words/say.ts'
import type { Field } from './fields.ts'
import { fieldsOf } from './fields.ts'
import { whyCut } from './fit.ts'
import { begin, inTime, type Opened, type Opening } from './open.ts'
import { toKeep, toOpen } from './appearances.ts'

/** What the fields are to hold, by name; as `Field.value` has it. */
export type Values = ReadonlyMap<string, string>

export interface SavedField {
  name: string
  wanted: string
  /** What stands in the saved file. */
  held: string
  /** Why what is drawn there is not what it holds; empty when it is. */
  drawn: string
}

export interface Saved {
  bytes: Uint8Array
  fields: SavedField[]
}

/** Puts what a field is to hold where the library looks when it saves. */
function put(storage: Opened['pdf']['annotationStorage'], field: Field, value: string): void {
  for (const { id, on } of field.widgets) {
    if (field.kind === 'text') storage.setValue(id, { value })
    else if (field.kind === 'choice')
      storage.setValue(id, { value: field.several ? value.split('\n').filter(Boolean) : value })
    else storage.setValue(id, { value: value !== '' && value === on })
  }
}

/** Sets the fields that differ from the file, and forgets what was set before. */
export function putAll({ pdf, fields }: Pick<Opened, 'pdf' | 'fields'>, values: Values): void {
  const storage = pdf.annotationStorage
  for (const field of fields) {
    for (const { id } of field.widgets) storage.remove(id)
    const value = values.get(field.name)
    if (value !== undefined && value !== field.value && !field.readOnly) put(storage, field, value)
  }
}

/** Letters that are drawn, without the blanks that a cell or a line break puts between them. */
const letters = (text: string): string => text.normalize('NFKC').replaceAll(/\s+/g, '')

function whyDrawn(field: Field, held: string, now: Field | undefined): string {
  if (field.kind !== 'text' || held === '') return ''
  if (now?.drawn === undefined || letters(now.drawn) === '')
    return say`the form’s own letters lack some of these: a viewer shows the text, a print may not`
  return letters(now.drawn) === letters(held) ? '' : say`the form shows only “${now.drawn}” of it`
}

/**
 * Writes the values into a copy of the file and reads the copy: as an addition behind the bytes that were there.
 * @throws NotOpened when it takes too long, is stopped, or the saved bytes cannot be read
 */
export async function saveForm(opened: Opened, values: Values, opening: Opening): Promise<Saved> {
  putAll(opened, values)
  const bytes = toKeep(await inTime(opened.pdf.saveDocument(), opening.signal), opened.bytes.length)
  const task = begin({ ...opening, password: opened.password }, toOpen(bytes))
  const readBack = async () => new Map((await fieldsOf(await task.promise)).map((each) => [each.name, each]))
  try {
    const now = await inTime(readBack(), opening.signal)
    const fields = opened.fields.map((field): SavedField => {
      const wanted = values.get(field.name) ?? field.value
      const held = now.get(field.name)?.value ?? ''
      const changed = wanted !== field.value
      const cut = changed && opening.measure ? whyCut(field, held, opening.measure) : ''
      return { name: field.name, wanted, held, drawn: changed ? whyDrawn(field, held, now.get(field.name)) || cut : '' }
    })
    return { bytes, fields }
  } finally {
    void task.destroy().catch(() => {})
  }
}
