import { reduce } from '../../lib/reduce/reduce.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'

/** What a check says of a sheet: `good: Enough points`. */
export function said(id: string, sheet: Sheet): string | undefined {
  const found = reduce(sheet).checks.find((check) => check.id === id)
  return found && `${found.outcome}: ${found.text}`
}
