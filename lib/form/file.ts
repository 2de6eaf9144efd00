/** Files made from the material for a page's file control. */
import { write as writeNumber } from '../units/write.ts'
import type { Item, Material } from './material.ts'
import type { Source } from './schema.ts'

export type FileSource = Extract<Source, { from: 'file' }>

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

/** A cell of RFC 4180; a text that a spreadsheet would run as a formula is kept a text. */
function cell(text: string): string {
  const safe = /^[=+@\t\r]|^-(?!\d)/.test(text) ? `'${text}` : text
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}

/** Every item of the material, one a line, as CSV. */
export function figuresCsv(material: Material): string {
  const rows = Object.values(material.items).map((item) => [
    item.group,
    item.label,
    valueOf(item),
    item.kind === 'quantity' ? item.unit : '',
  ])
  return [['group', 'item', 'value', 'unit'], ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('')
}

/** Whether the bytes of the file are written as they should be. */
export function canBeFile({ bytes = '' }: FileSource): boolean {
  return bytes.length % 4 === 0 && /^[A-Za-z0-9+/]*={0,2}$/.test(bytes)
}

export function fileOf({ name, type, text, bytes }: FileSource, material: Material): File {
  const content =
    bytes === undefined ? (text ?? figuresCsv(material)) : Uint8Array.from(atob(bytes), (each) => each.charCodeAt(0))
  return new File([content], name, { type })
}
