/** Keys of a sheet that are not known, each with the nearest one that is. */
import type { $ZodType, $ZodTypes } from 'zod/v4/core'
import type { SheetIssue } from './errors.ts'
import { say } from '../words/say.ts'

type Path = (string | number)[]

// oxlint-disable-next-line eslint/no-underscore-dangle -- where zod keeps what a schema is made of, for code that walks it
const defOf = (schema: $ZodType) => (schema as $ZodTypes)._zod.def

/** The keys of an object and what stands under each; those of every form that an object may have. */
function shapeOf(schema: $ZodType): Record<string, $ZodType> {
  const def = defOf(schema)
  if (def.type === 'object') return def.shape
  if (def.type === 'union') return Object.assign({}, ...def.options.map(shapeOf)) as Record<string, $ZodType>
  return def.type === 'optional' ? shapeOf(def.innerType) : {}
}

/** What stands in each place of a list, or under each name of a record; nothing when it is neither. */
function eachOf(schema: $ZodType): $ZodType | undefined {
  const def = defOf(schema)
  if (def.type === 'optional') return eachOf(def.innerType)
  return def.type === 'array' ? def.element : def.type === 'record' ? def.valueType : undefined
}

interface Known {
  /** What stands under each key; of a list or a record nothing. */
  shape: Record<string, $ZodType>
  each: $ZodType | undefined
}

const looked = new WeakMap<$ZodType, Known>()

/** A sheet has many points of one schema: each schema is taken apart once. */
function knownOf(schema: $ZodType): Known {
  const known = looked.get(schema) ?? { shape: shapeOf(schema), each: eachOf(schema) }
  looked.set(schema, known)
  return known
}

/** How many letters have to be changed, added, dropped or swapped with the next: the optimal string alignment distance. */
function distance(one: string, other: string): number {
  const rows = [Array.from({ length: other.length + 1 }, (_, at) => at)]
  for (let i = 1; i <= one.length; i++) {
    const row = [i]
    for (let j = 1; j <= other.length; j++) {
      const same = one[i - 1] === other[j - 1] ? 0 : 1
      const swapped = i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]
      row[j] = Math.min(
        rows[i - 1]![j]! + 1,
        row[j - 1]! + 1,
        rows[i - 1]![j - 1]! + same,
        swapped ? rows[i - 2]![j - 2]! + 1 : Infinity,
      )
    }
    rows.push(row)
  }
  return rows[one.length]![other.length]!
}

/** Where in the sheet a key is known, as a path in words. */
function placeOf(schema: $ZodType, key: string, above = ''): string | undefined {
  const shape = shapeOf(schema)
  if (Object.hasOwn(shape, key)) return above + key
  for (const [name, below] of Object.entries(shape)) {
    const found = placeOf(below, key, `${above}${name}.`)
    if (found !== undefined) return found
  }
  return undefined
}

/** Longer names are no slip of the finger: only their beginning is compared. */
const MOST = 60

function nearest(key: string, known: readonly string[]): string {
  const off = (name: string) => distance(key.slice(0, MOST).toLowerCase(), name.toLowerCase())
  return known.toSorted((a, b) => off(a) - off(b))[0] ?? ''
}

/**
 * One issue for each key that a sheet does not have, with the nearest one that it has: a misspelt key would be left out of
 * the figures without a word.
 *
 * @param input anything; values that are undefined count as not there
 */
export function unknownKeys(input: unknown, schema: $ZodType, root: $ZodType = schema): SheetIssue[] {
  const issues: SheetIssue[] = []
  const path: Path = []
  const look = (value: unknown, at: $ZodType): void => {
    // Numbers and words hold no keys.
    if (typeof value !== 'object' || value === null) return
    const { each, shape } = knownOf(at)
    const list = Array.isArray(value)
    for (const key of list ? value.keys() : Object.keys(value)) {
      const below = (value as Record<string | number, unknown>)[key]
      if (below === undefined) continue
      const known = each ?? (Object.hasOwn(shape, key) ? shape[key] : undefined)
      if (known) {
        path.push(key)
        look(below, known)
        path.pop()
      } else if (!list) issues.push(...unknown(key as string, path, shape, root))
    }
  }
  look(input, schema)
  return issues
}

function unknown(key: string, above: Path, shape: Record<string, $ZodType>, root: $ZodType): SheetIssue[] {
  const known = Object.keys(shape)
  if (known.length === 0) return []
  const path = [...above, key]
  const right = placeOf(root, key) ?? [...above, nearest(key, known)].join('.')
  const message = say`${path.join('.').slice(0, 2 * MOST)}: did you mean ${right}?`
  return [{ path, code: 'unknown key', message }]
}
