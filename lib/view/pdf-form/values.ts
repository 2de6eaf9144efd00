/** What the fields of the open form hold by now. */
import type { Field } from '../../pdf/fields.ts'

export class Held {
  readonly #values: Map<string, string>
  readonly #hear = new Set<(name: string) => void>()

  constructor(fields: readonly Field[]) {
    this.#values = new Map(fields.map(({ name, value }) => [name, value]))
  }

  get all(): ReadonlyMap<string, string> {
    return this.#values
  }

  of(name: string): string {
    return this.#values.get(name) ?? ''
  }

  set(name: string, value: string): void {
    if (this.#values.get(name) === value) return
    this.#values.set(name, value)
    for (const hear of this.#hear) hear(name)
  }

  /** Hears the name of each field that changes. */
  listen(hear: (name: string) => void): () => void {
    this.#hear.add(hear)
    return () => this.#hear.delete(hear)
  }
}

/** What a field that holds this shows to a person: the words of a choice, not what the file calls it. */
export function shownOf(field: Field, options: readonly string[], value: string): string {
  if (field.kind === 'radio')
    return value === '' ? '' : (options[field.widgets.findIndex(({ on }) => on === value)] ?? value)
  if (field.kind !== 'choice') return value
  return value
    .split('\n')
    .map((each) => field.options.find((option) => option.value === each)?.label ?? each)
    .join('; ')
}
