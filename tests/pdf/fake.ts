import type { Field } from '../../lib/pdf/fields.ts'

/** A field of a form, with what a test says of it. */
export const fakeField = (of: Partial<Field> = {}): Field => ({
  name: 'Text1',
  kind: 'text',
  widgets: [{ id: '1R', page: 1, box: { left: 0, top: 0, right: 180, bottom: 16 }, on: '' }],
  value: '',
  tooltip: '',
  options: [],
  several: false,
  lines: false,
  most: 0,
  comb: false,
  readOnly: false,
  required: false,
  size: 10,
  align: 'left',
  computed: false,
  drawn: undefined,
  ...of,
})
