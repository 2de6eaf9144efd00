/** The kinds of control that can be written; a folder each in lib/form/kinds/. */
export const controlKinds = [
  'text',
  'number',
  'date',
  'time',
  'date-time',
  'month',
  'date-boxes',
  'date-sections',
  'calendar',
  'textarea',
  'select',
  'multiple',
  'combobox',
  'listbox',
  'radio',
  'checkbox',
  'toggle',
  'slider',
  'spinbutton',
  'chips',
  'rich-text',
  'file',
] as const

export type ControlKind = (typeof controlKinds)[number]
