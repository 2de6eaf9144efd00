/** The shape that a schema stands for, and values that a schema takes, worked out from the schema itself. */
import type { Shape } from '../lib/messages/shape.ts'

interface Def {
  type: string
  values?: (string | boolean)[]
  entries?: Record<string, string>
  shape?: Record<string, Schema>
  element?: Schema
  items?: Schema[]
  options?: Schema[]
  innerType?: Schema
  valueType?: Schema
}

export interface Schema {
  _zod: { def: unknown }
}

// oxlint-disable-next-line no-underscore-dangle -- where zod keeps what a schema says
export const defOf = (schema: Schema): Def => schema._zod.def as Def

/** @throws Error for a kind of schema that no shape stands for */
export function shapeOf(schema: Schema): Shape {
  const def = defOf(schema)
  switch (def.type) {
    case 'string':
      return 's'
    case 'number':
      return 'n'
    case 'boolean':
      return 'b'
    case 'literal':
      return ['word', ...(def.values ?? [])]
    case 'enum':
      return ['word', ...Object.values(def.entries ?? {})]
    case 'array':
      return ['list', shapeOf(def.element as Schema)]
    case 'tuple':
      return ['row', ...(def.items ?? []).map(shapeOf)]
    case 'record':
      return ['names', shapeOf(def.valueType as Schema)]
    case 'union':
      return ['any', ...(def.options ?? []).map(shapeOf)]
    case 'object':
      return Object.fromEntries(
        Object.entries(def.shape ?? {}).map(([name, one]) => {
          const inner = defOf(one)
          return inner.type === 'optional' ? [`${name}?`, shapeOf(inner.innerType as Schema)] : [name, shapeOf(one)]
        }),
      )
    default:
      throw new Error(`No shape stands for ${def.type}.`)
  }
}

/** A value that the schema takes; with `spoil` now and then something else in a place of it. */
export function valueOf(schema: Schema, random: () => number, spoil = 0): unknown {
  if (random() < spoil) return wrong[Math.floor(random() * wrong.length)]
  const def = defOf(schema)
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T
  const some = <T>(make: () => T): T[] => Array.from({ length: Math.floor(random() * 3) }, make)
  const value = (one: Schema | undefined) => valueOf(one as Schema, random, spoil)
  switch (def.type) {
    case 'string':
      return pick(texts)
    case 'number':
      return pick([0, -1, 3, 0.5, 1e21])
    case 'boolean':
      return random() < 0.5
    case 'literal':
      return pick(def.values ?? [])
    case 'enum':
      return pick(Object.values(def.entries ?? {}))
    case 'array':
      return some(() => value(def.element))
    case 'tuple':
      return (def.items ?? []).map(value)
    case 'record':
      return Object.fromEntries(some(() => [pick(texts), value(def.valueType)]))
    case 'union':
      return value(pick(def.options ?? []))
    case 'optional':
      return random() < 0.5 ? undefined : value(def.innerType)
    case 'object': {
      const all = Object.entries(def.shape ?? {}).map(([name, one]) => [name, value(one)] as const)
      const kept = all.filter(([, one]) => one !== undefined && random() >= spoil)
      return Object.fromEntries(random() < 0.1 ? [...kept, ['more', 1]] : kept)
    }
    default:
      throw new Error(`No value is made for ${def.type}.`)
  }
}

const texts = [
  '',
  'CFM50',
  'Datum',
  '14 Tannery Row',
  '<img src=x onerror=alert(1)>',
  '\uD800',
  'a'.repeat(300),
  'constructor',
  'toString',
]
const wrong: readonly unknown[] = [
  null,
  undefined,
  NaN,
  Infinity,
  1,
  '',
  'text',
  true,
  [],
  {},
  [1],
  { type: 'end' },
  [['a']],
  -0,
]
