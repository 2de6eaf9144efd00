/** What kinds of control have in common. */
import type { ControlKind } from './schema.ts'

type Kinds = ReadonlySet<ControlKind>

/** Take a date as year-month-day, whatever the page shows. */
export const dateKinds: Kinds = new Set(['date', 'date-boxes', 'date-sections', 'calendar'])
/** Show all their options at once. */
export const optionKinds: Kinds = new Set(['select', 'multiple', 'radio', 'listbox'])
/** Take several options, written `A; B`. */
export const severalKinds: Kinds = new Set(['multiple', 'listbox'])
/** Are on or off. */
export const tickKinds: Kinds = new Set(['checkbox', 'toggle'])
/** Take a bare number. */
export const numberKinds: Kinds = new Set(['number', 'slider', 'spinbutton'])
/** Hold one line of text. */
export const lineKinds: Kinds = new Set(['text', 'combobox'])
/** Hold lines of text. */
export const proseKinds: Kinds = new Set(['textarea', 'rich-text'])

/** Can be locked: shown by the page and not to be changed. */
export const lockableKinds: Kinds = new Set([
  'text',
  'number',
  'date',
  'time',
  'date-time',
  'month',
  'textarea',
  'chips',
  'slider',
  'spinbutton',
  'rich-text',
])

/** Are added to by a fill: what stands there stays. */
export const addedKinds: Kinds = new Set(['chips', 'rich-text'])

/** Kinds that a redesigned page exchanges for each other. */
export const exchangeable: readonly Kinds[] = [
  new Set(['text', 'number', 'slider', 'spinbutton', 'date', 'time', 'textarea', 'combobox']),
  new Set(['date', 'date-boxes', 'date-sections', 'calendar', 'date-time', 'month', 'text']),
  new Set(['select', 'radio', 'combobox', 'listbox']),
  new Set(['multiple', 'listbox', 'chips', 'text']),
  tickKinds,
  proseKinds,
]

/** Several values in one text. */
export const several = (text: string): string[] =>
  text
    .split(/[;\n]/)
    .map((part) => part.trim())
    .filter(Boolean)
