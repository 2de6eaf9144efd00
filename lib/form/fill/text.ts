/** The text that a source puts into a control. */
import { convert } from '../../units/convert.ts'
import { numberIn } from '../../units/number-in.ts'
import { symbol } from '../../units/symbol.ts'
import { write as writeNumber } from '../../units/write.ts'
import { choose, chooseAmong } from '../choose.ts'
import { writeDate } from '../dates.ts'
import { dateKinds, numberKinds, several, severalKinds } from '../kind-traits.ts'
import type { Item, Material, Quantity } from '../material.ts'
import { checked, notChecked } from '../tick-words.ts'
import type { Clues, Source, Write } from '../schema.ts'
import { plain as inPlainWords } from '../words.ts'
import { labelWords, roleWords } from '../../words/names.ts'
import { readyFile, whyNoFile } from './file.ts'
import { isEmpty, itemOf } from '../item-of.ts'
import { say } from '../../words/say.ts'

export type Text = { text: string; note?: string } | { refused: string }

/** What the text is for: the kind of control, and the options it offers. */
export type Target = Pick<Clues, 'kind' | 'options'>

function quantity(item: Quantity, write: Write, kind: Clues['kind']): Text {
  const unit = write.unit ?? item.unit
  const decimals = write.decimals ?? item.decimals
  const value = convert(item.value, item.unit, unit)
  const plain = writeNumber(value, { decimals, rounding: write.rounding })
  const text = numberKinds.has(kind)
    ? plain
    : writeNumber(value, { decimals, rounding: write.rounding, grouping: write.grouping, mark: write.mark })
  const note = roundingNote(item, value, Number(plain), unit)
  return note ? { text, note } : { text }
}

/** Four significant digits, or as many more as it takes to stand on the same side of the limit as the number does. */
function unrounded(value: number, limit = Infinity): string {
  let decimals = Math.min(12, Math.max(0, 3 - Math.floor(Math.log10(Math.abs(value) || 1))))
  while (decimals < 12 && value <= limit !== Number(writeNumber(value, { decimals })) <= limit) decimals++
  return writeNumber(value, { decimals })
}

function roundingNote(item: Quantity, value: number, rounded: number, unit: string): string | undefined {
  const coarse = value !== 0 && Math.abs(rounded - value) > 0.002 * Math.abs(value)
  if (item.limit === undefined) return coarse ? say`${unrounded(value)} unrounded` : undefined
  const limit = convert(item.limit, item.unit, unit)
  const exact = unrounded(value, limit)
  if (value <= limit === rounded <= limit) return coarse ? say`${exact} unrounded, verdict the same` : undefined
  const bound = `${Number(writeNumber(limit, { decimals: 4 }))} ${symbol(unit)}`.trim()
  return value <= limit
    ? say`rounding flips the verdict: ${exact} unrounded meets the limit of ${bound}`
    : say`rounding flips the verdict: ${exact} unrounded is above the limit of ${bound}`
}

/** The option that the form map has for a text, whatever its case and marks. */
function chosenFor(text: string, choices: Write['choices'] = {}): string | undefined {
  if (Object.hasOwn(choices, text)) return choices[text]
  const said = inPlainWords(text)
  return Object.entries(choices).find(([each]) => inPlainWords(each) === said)?.[1]
}

function ofItem(item: Item, write: Write, target: Target): Text {
  switch (item.kind) {
    case 'quantity':
      return quantity(item, write, target.kind)
    case 'text':
      return { text: chosenFor(item.text, write.choices) ?? item.text }
    case 'date': {
      if (dateKinds.has(target.kind)) return { text: item.iso }
      if (target.kind === 'month') return { text: item.iso.slice(0, 7) }
      const text = writeDate(item.iso, write.date ?? 'yyyy-MM-dd')
      return text === undefined
        ? {
            refused: say`“${item.iso}” cannot be written here: a date is typed as year-month-day, and a date pattern has yyyy or yy, MM or M, dd or d, each once.`,
          }
        : { text }
    }
    case 'choice': {
      const chosen = item.options.find(({ value }) => value === item.value)
      const label = write.choices?.[item.value] ?? chosen?.label ?? item.value
      return { text: label }
    }
  }
}

/** An item that the job does not have, by what its id says. */
function lackingName(id: string): string {
  const [role = '', ...field] = id.split('/')
  return `${roleWords(role === 'job' ? 'building' : role)}: ${labelWords(field.join('/').replaceAll('-', ' '))}`
}

function lacking(id: string, { items }: Material): string {
  const [role = ''] = id.split('/')
  const others = /^(job|tester)$|\+/.test(role) || Object.keys(items).some((key) => key.startsWith(`${role}/`))
  return others
    ? say`This job has no “${lackingName(id)}”: type what it needs, or bind something else.`
    : say`This job has no test “${roleWords(role)}”: add it, or bind something else.`
}

function one(id: string, write: Write, material: Material, target: Target): Text {
  const item = itemOf(material, id)
  if (!item) return { refused: lacking(id, material) }
  if (isEmpty(item))
    return {
      refused:
        ('why' in item && item.why) || say`${roleWords(item.group)}: ${labelWords(item.label)} is empty in this job.`,
    }
  try {
    return ofItem(item, write, target)
  } catch (error) {
    return { refused: say`${error instanceof Error ? error.message : String(error)} Change the unit or the format.` }
  }
}

/** A list of days or months shows names or leading zeros where a date pattern gives bare numbers. */
function otherWords(iso: string, text: string): string[] {
  const day = new Date(`${iso}T00:00:00Z`)
  const month = (length: 'long' | 'short') => day.toLocaleDateString('en', { month: length, timeZone: 'UTC' })
  return [text.padStart(2, '0'), month('long'), month('short')]
}

/** Makes the text fit what the control can hold, or says why it cannot. */
function fitted(text: Text, source: Source, material: Material, target: Target): Text {
  if ('refused' in text) return text
  const item = source.from === 'item' ? itemOf(material, source.item) : undefined
  if (target.kind === 'file')
    return source.from === 'file' ? text : { refused: say`The control takes a file: bind a file to it.` }
  if (source.from === 'file') return { refused: say`A file goes into a file control only: bind something else.` }
  switch (target.kind) {
    case 'number':
    case 'slider':
    case 'spinbutton':
      if (/^[-+]?(\d+(\.\d*)?|\.\d+)(e[-+]?\d+)?$/i.test(text.text)) return text
      if (source.from === 'text' && Number.isFinite(numberIn(text.text) ?? NaN))
        return { ...text, text: String(numberIn(text.text)) }
      return { refused: say`“${text.text}” is not a plain number, and the control takes nothing else.` }
    case 'date':
    case 'date-boxes':
    case 'date-sections':
    case 'calendar':
      if (/^\d{4}-\d{2}-\d{2}$/.test(text.text)) return text
      return { refused: say`“${text.text}” is not a date as year-month-day, and the control takes nothing else.` }
    case 'time':
      if (/^\d{2}:\d{2}(:\d{2})?$/.test(text.text)) return text
      return { refused: say`“${text.text}” is not a time as 14:05, and the control takes nothing else.` }
    case 'date-time':
      if (/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?$/.test(text.text)) return text
      return {
        refused: say`“${text.text}” is not a date and time as 2026-02-11T14:05, and the control takes nothing else.`,
      }
    case 'month':
      if (/^\d{4}-\d{2}$/.test(text.text)) return text
      return { refused: say`“${text.text}” is not a month as 2026-02, and the control takes nothing else.` }
    case 'checkbox':
    case 'toggle': {
      if (text.text === checked || text.text === notChecked) return text
      const value = item?.kind === 'choice' ? item.value : text.text
      if (/^(yes|true|1|on|pass|passed|checked)$/i.test(value)) return { ...text, text: checked }
      if (/^(no|false|0|off|fail|failed|not checked)$/i.test(value)) return { ...text, text: notChecked }
      return { refused: say`“${text.text}” does not say whether to tick: choose “${checked}” or “${notChecked}”.` }
    }
    case 'multiple':
    case 'listbox':
    case 'select':
    case 'radio': {
      // A list that draws its options in part, or gets them later, is searched when it is written.
      if (target.options.length === 0) return text
      const parts = severalKinds.has(target.kind) ? several(text.text) : []
      if (parts.length > 1) {
        const chosen = parts.map((part) => choose(part, [], target.options))
        const at = chosen.indexOf(undefined)
        return at < 0 ? { ...text, text: chosen.join('; ') } : { refused: say`No option “${parts[at] ?? ''}” here.` }
      }
      const others =
        item?.kind === 'choice' ? [item.value] : item?.kind === 'date' ? otherWords(item.iso, text.text) : []
      const option =
        choose(text.text, others, target.options) ??
        (item?.kind === 'text' ? chooseAmong(text.text, target.options) : undefined)
      if (option !== undefined) return { ...text, text: option }
      return { refused: say`No option “${text.text}” here: say which option stands for it.` }
    }
    case 'text':
    case 'combobox':
    case 'chips':
      return text.text.includes('\n')
        ? { ...text, text: text.text.replace(/\s+/g, (run) => (run.includes('\n') ? ' ' : run)) }
        : text
    case 'textarea':
    case 'rich-text':
      return text
  }
}

/** The text that goes into a control of this kind, or the reason why none does. */
export function textOf(source: Source, material: Material, target: Target): Text {
  if (source.from === 'item') return fitted(one(source.item, source.write, material, target), source, material, target)
  if (source.from === 'text') return fitted({ text: source.text }, source, material, target)
  if (source.from === 'file') {
    const refused = whyNoFile(source, material)
    const note = readyFile(source, material)?.note
    return refused ? { refused } : fitted({ text: source.name, ...(note && { note }) }, source, material, target)
  }
  let text = ''
  const notes: string[] = []
  for (const part of source.parts) {
    // Inside words a figure is written for a reader, whatever control the words go into.
    const piece: Text = 'item' in part ? one(part.item, part.write, material, { kind: 'text', options: [] }) : part
    if ('refused' in piece) return piece
    text += piece.text
    if ('note' in piece && piece.note) notes.push(piece.note)
  }
  return fitted(notes.length > 0 ? { text, note: notes.join('; ') } : { text }, source, material, target)
}

/** Where the text comes from, in words: `after: CFM50`. */
export function sourceWords(source: Source, material: Material): string {
  if (source.from === 'text') return say`fixed text`
  if (source.from === 'file') {
    const { text, bytes, item } = source
    if (item === 'report') return say`report of all tests`
    if (item !== undefined) return say`report of the test “${roleWords(item.replace(/\/report$/, ''))}”`
    return text === undefined && bytes === undefined ? say`all figures, as a file` : say`a file`
  }
  const name = (id: string) => {
    const item = itemOf(material, id)
    return item ? `${roleWords(item.group)}: ${labelWords(item.label)}` : lackingName(id)
  }
  if (source.from === 'item') return name(source.item)
  return source.parts.flatMap((part) => ('item' in part ? [name(part.item)] : [])).join(', ') || say`fixed text`
}
