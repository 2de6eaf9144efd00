/** Takes anything for a sheet, or says which cells are missing or of the wrong kind. */
import type { $ZodIssue } from 'zod/v4/core'
import { type Sheet, sheetSchema } from '../sheet/schema.ts'
import { SheetError, type SheetIssue, cellName, sentence } from './errors.ts'
import { unknownKeys } from './known-keys.ts'
import { say } from '../words/say.ts'

type Path = (string | number)[]

/** What is wrong in form: of a point that fits neither shape, the shape it is closest to. */
function formIssues(issues: readonly $ZodIssue[], above: Path = []): SheetIssue[] {
  return issues.flatMap((issue) => {
    const path = [...above, ...(issue.path as Path)]
    if (issue.code === 'invalid_union' && issue.errors.length > 0) {
      const [shown, device] = issue.errors as [$ZodIssue[], $ZodIssue[]]
      return formIssues(device.length <= shown.length ? device : shown, path)
    }
    const subject = sentence(cellName(path))
    return [{ path, code: 'invalid', message: say`${subject} is missing or not usable: ${remedyOf(issue)}.` }]
  })
}

function remedyOf(issue: $ZodIssue): string {
  if (issue.code === 'invalid_value') return say`choose ${issue.values.join(say` or `)}`
  if (issue.code !== 'invalid_type') return say`type it again`
  if (issue.expected === 'number') return say`type a number`
  return issue.expected === 'string' ? say`choose one` : say`give an ${issue.expected}`
}

/** A point that gives both a flow and a device pressure says two things at once. */
function bothIn(input: unknown): SheetIssue[] {
  const points = (input as { points: Record<string, unknown>[] }).points
  return points.flatMap((point, index) => {
    if (point['flow'] === undefined || point['devicePressure'] === undefined) return []
    const path = ['points', index]
    const message = say`${sentence(cellName(path))} has a flow and a device pressure: clear one of them.`
    return [{ path, code: 'both' as const, message }]
  })
}

/**
 * A sheet of the right form; whether it can be computed is another question.
 *
 * @param input anything
 * @throws SheetError with one issue for each cell that is missing, of the wrong kind, or says two things, and for each key that is
 * not known
 */
export function parseSheet(input: unknown): Sheet {
  const unknown = unknownKeys(input, sheetSchema)
  const parsed = sheetSchema.safeParse(input)
  const form = parsed.success ? [] : formIssues(parsed.error.issues)
  if (!parsed.success || unknown.length > 0) throw new SheetError([...unknown, ...form])
  const both = bothIn(input)
  if (both.length > 0) throw new SheetError(both)
  return parsed.data
}
