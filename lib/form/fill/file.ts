/** Files made from the material for a page's file control. */
import { csvRows } from '../../csv.ts'
import { write as writeNumber } from '../../units/write.ts'
import { say } from '../../words/say.ts'
import { isEmpty } from '../item-of.ts'
import type { Item, Material, ReadyFile } from '../material.ts'
import type { Source } from '../schema.ts'

export type FileSource = Extract<Source, { from: 'file' }>

/** A file as it travels: words, or bytes in base 64. */
export type FileContent = { name: string; type: string; text?: string; bytes?: string }

function valueOf(item: Item): string {
  switch (item.kind) {
    case 'quantity':
      return writeNumber(item.value, { decimals: item.decimals })
    case 'date':
      return item.iso
    case 'choice':
      return item.options.find(({ value }) => value === item.value)?.label ?? item.value
    case 'text':
      return item.text
  }
}

/** Every item of the material, one a line, as CSV. */
export function figuresCsv(material: Material): string {
  const rows = Object.values(material.items)
    .filter((item) => !isEmpty(item))
    .map((item) => [item.group, item.label, valueOf(item), item.kind === 'quantity' ? item.unit : ''])
  return csvRows([['group', 'item', 'value', 'unit'], ...rows])
}

const isBase64 = (bytes: string): boolean => bytes.length % 4 === 0 && /^[A-Za-z0-9+/]*={0,2}$/.test(bytes)

/** The file of the material that a source names, if it does. */
export function readyFile({ item }: FileSource, { files = {} }: Material): ReadyFile | undefined {
  return item !== undefined && Object.hasOwn(files, item) ? files[item] : undefined
}

/** Why there is no file to put in; undefined when there is one. */
export function whyNoFile(source: FileSource, material: Material): string | undefined {
  const ready = readyFile(source, material)
  if (source.item !== undefined) {
    if (!ready) return say`The job has no test for this report: add the test, or bind another file.`
    if (ready.bytes === undefined)
      return say`The calculator makes this report: open it from the toolbar, then choose Fill this page.`
  }
  if (isBase64(ready?.bytes ?? source.bytes ?? '')) return undefined
  return say`The file in the form map is damaged: choose it again.`
}

/** What goes into the file: words, or bytes in base 64. */
export function contentOf(source: FileSource, material: Material): FileContent {
  const { name, type, text } = source
  const bytes = readyFile(source, material)?.bytes ?? source.bytes
  return bytes === undefined ? { name, type, text: text ?? figuresCsv(material) } : { name, type, bytes }
}

export function fileOf({ name, type, text = '', bytes }: FileContent): File {
  const content = bytes === undefined ? text : Uint8Array.from(atob(bytes), (each) => each.charCodeAt(0))
  return new File([content], name, { type })
}
