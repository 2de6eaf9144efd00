/** Something about a typed cell that the person should know: what it is, and what to do. */
export interface Problem {
  /** Path of the typed cell: `points.2.flow`, `baselineBefore`, `building.volume`, `device`, `line.4` of a paste. */
  path: string
  code: string
  message: string
  /** The same where it stands beside its cell and is said in full elsewhere. */
  beside?: string
  /** `missing`: still to be typed; `bad`: typed, and left out as it stands. */
  severity: 'missing' | 'bad'
}
