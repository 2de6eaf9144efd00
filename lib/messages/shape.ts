/**
 * Whether a value has a shape, in a few hundred bytes: for the helper, which is put into pages and where the schemas
 * themselves would weigh too much. A test holds every shape to the schema it stands for.
 */

/**
 * 's' a text, 'n' a finite number, 'b' true or false; an object of shapes, where a name that ends in `?` may be missing;
 * a list that says what it is by its first word: one of these words, a list of a shape, a list of these shapes in order,
 * an object of any names with values of a shape, one of these shapes.
 */
export type Shape =
  | 's'
  | 'n'
  | 'b'
  | { readonly [name: string]: Shape }
  | readonly ['word', ...(string | boolean)[]]
  | readonly ['list', Shape]
  | readonly ['row', ...Shape[]]
  | readonly ['names', Shape]
  | readonly ['any', ...Shape[]]

const types: Readonly<Record<string, string>> = { s: 'string', b: 'boolean' }

/**
 * Whether the value has the shape. Names that the shape does not have are let through, as the schemas do.
 *
 * @example fits({ type: 'end' }, { type: ['word', 'end'] }) // true
 */
export function fits(value: unknown, shape: Shape): boolean {
  if (shape === 'n') return Number.isFinite(value)
  if (typeof shape === 'string') return typeof value === types[shape]
  if (Array.isArray(shape)) {
    const [is, ...rest] = shape as readonly [string, ...Shape[]]
    const [first = 's'] = rest
    if (is === 'word') return rest.includes(value as never)
    if (is === 'any') return rest.some((one) => fits(value, one))
    if (is === 'list') return Array.isArray(value) && value.every((one) => fits(one, first))
    if (is === 'row')
      return Array.isArray(value) && value.length === rest.length && rest.every((one, at) => fits(value[at], one))
    return isObject(value) && !Array.isArray(value) && Object.values(value).every((one) => fits(one, first))
  }
  if (!isObject(value) || Array.isArray(value)) return false
  return Object.entries(shape).every(([name, one]) => {
    const found = value[name.replace('?', '')]
    return (name.endsWith('?') && found === undefined) || fits(found, one)
  })
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null
}
