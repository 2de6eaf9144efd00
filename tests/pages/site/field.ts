/** How the office describes a form: both the page and the tests that read its model are made from this. */

export interface Option {
  value: string
  label: string
}

export interface Field {
  /** Its name in the page's model. */
  name: string
  label: string
  /** 'masked': a text input that puts the old text back when the new one is not a number. */
  kind: 'text' | 'number' | 'masked' | 'date' | 'select' | 'radio' | 'checkbox' | 'textarea'
  hint?: string
  value?: string
  step?: string
  maxLength?: number
  options?: readonly Option[]
}

export interface Section {
  legend: string
  fields: readonly Field[]
}

export type Model = Record<string, string | boolean>

export function options(...pairs: [value: string, label: string][]): Option[] {
  return pairs.map(([value, label]) => ({ value, label }))
}

/** What the page's model holds for a field, in the words that a person sees. */
export function shown(field: Field, model: Model): string {
  const held = model[field.name]
  if (field.kind === 'checkbox') return held === true ? 'checked' : 'not checked'
  if (typeof held !== 'string') return ''
  return field.options?.find((option) => option.value === held)?.label ?? held
}
