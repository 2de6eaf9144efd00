import { bounds } from '../bounds.ts'
import { BookError, type BookProblem } from './error.ts'
import type { Schema } from './sound.ts'
import { say } from '../words/say.ts'

/**
 * Returns `value` as the schema sees it.
 * @throws BookError that names every field that does not fit.
 */
export function check<T>(schema: Schema<T>, value: unknown, what: string): T {
  const result = schema.safeParse(value)
  if (result.success) {
    // JSON writes half of a surrogate pair as an escape; no other text has one that begins so.
    const json = JSON.stringify(result.data) ?? ''
    const whole = /\\ud[89a-f]/.test(json) ? wellFormed(result.data) : result.data
    const size = json.length * 3 <= bounds.record ? json.length : sizeOf(whole)
    if (size <= bounds.record) return whole
    const message = say`${what} was not kept: it is ${Math.ceil(size / 1e6)} MB long, where the book takes ${bounds.record / 1e6} MB. Shorten its texts.`
    throw new BookError([{ code: 'invalid', path: '', message }])
  }
  const [first, ...rest] = result.error.issues.map((issue): BookProblem => {
    const path = issue.path.join('.')
    return {
      code: 'invalid',
      path,
      message: say`${what} was not kept: ${path || 'it'} is not what the book expects (${issue.message}).`,
    }
  })
  throw new BookError([first!, ...rest])
}

/** Bytes of JSON. */
export const sizeOf = (value: unknown): number => new TextEncoder().encode(JSON.stringify(value) ?? '').byteLength

/**
 * The same with every half of a surrogate pair that stands alone replaced: a page may hold such text, and RFC 8785 has
 * no form for it.
 */
function wellFormed<T>(value: T): T {
  if (typeof value === 'string') return value.toWellFormed() as T
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) return value.map(wellFormed) as T
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name.toWellFormed(), wellFormed(one)])) as T
}
