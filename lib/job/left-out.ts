/** Points that stay in the job as typed but are not reduced, because the person left them out and said why. */
import type { Test, TypedPoint } from './schema.ts'

export interface LeftOut {
  /** Index among the typed rows. */
  row: number
  reason: string
  point: TypedPoint
}

/** Why a point is left out; empty when it is not. Without a reason nothing is left out. */
export const reasonOf = (point: TypedPoint): string => point.leftOut?.trim() ?? ''

/** The points of a test that are left out, in the order they were typed. */
export const pointsLeftOut = ({ sheet }: Pick<Test, 'sheet'>): LeftOut[] =>
  sheet.points.flatMap((point, row) => {
    const reason = reasonOf(point)
    return reason === '' ? [] : [{ row, reason, point }]
  })
