import type { ControlKind } from '../schema.ts'

/** Kinds that plain forms have none of, each long to write: they come as a script of their own where a form map names one. */
export const extraKinds = [
  'calendar',
  'combobox',
  'date-boxes',
  'date-sections',
  'listbox',
  'rich-text',
  'slider',
  'spinbutton',
] as const satisfies ControlKind[]

export type ExtraKind = (typeof extraKinds)[number]

export const isExtra = (kind: ControlKind): kind is ExtraKind => (extraKinds as readonly ControlKind[]).includes(kind)
