import type * as z from 'zod/mini'
import { BookError, type BookProblem } from './error.ts'

type Checker<T> = { safeParse: (value: unknown) => z.core.util.SafeParseResult<T> }

/**
 * Returns `value` as the schema sees it.
 * @throws BookError that names every field that does not fit.
 */
export function check<T>(schema: Checker<T>, value: unknown, what: string): T {
  const result = schema.safeParse(value)
  if (result.success) return result.data
  const [first, ...rest] = result.error.issues.map((issue): BookProblem => {
    const path = issue.path.join('.')
    return {
      code: 'invalid',
      path,
      message: `${what} was not kept: ${path || 'it'} is not what the book expects (${issue.message}).`,
    }
  })
  throw new BookError([first!, ...rest])
}
