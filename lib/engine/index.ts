/** The engine: from readings to figures, anywhere JavaScript runs. No DOM, no network. */
export { ENGINE_VERSION } from './version.ts'
export { reduce, workingOf } from '../reduce/reduce.ts'
export { points, type PointResult } from '../reduce/points.ts'
export { combine } from '../reduce/combine.ts'
export { reduction, type Reduction, type ReductionOptions } from '../reduce/reduction.ts'
export { beforeAfter, type Tested } from '../reduce/before-after.ts'
export { sumSystems, type SumOptions, type SystemSum } from '../reduce/systems.ts'
export { knownHole, type KnownHole, type KnownHoleFlow } from '../reduce/known-hole.ts'
export {
  zoneLeakage,
  zonePressures,
  type ZoneLeakage,
  type ZonePressures,
  type ZoneRatio,
  type ZoneTest,
} from '../reduce/zones.ts'
export { figures, labelOf, decimalsOf } from '../reduce/figures/index.ts'
export type { Figure, Group, Need } from '../reduce/figures/figure.ts'
export { SheetError, type SheetIssue, type IssueCode } from '../reduce/errors.ts'
export { reportSchema, type CheckResult, type FigureValue, type Fit, type Report, type Step } from '../reduce/report.ts'
export type { ReduceOptions } from '../reduce/leak.ts'
export { sheetSchema, type Point, type Range, type Sheet, type Units } from '../sheet/schema.ts'
export {
  askFactor,
  limitSchema,
  limitsFor,
  meets,
  ownLimit,
  publishedLimit,
  publishedLimits,
  roundingFlips,
  verdict,
  zoneNumber,
  type Compared,
  type Fitting,
  type Flip,
  type Limit,
  type Scope,
  type Sentence,
  type Verdict,
  type Withheld,
} from '../limits/index.ts'
export { convert, unitsLike, type UnitId } from '../units/convert.ts'
export { symbol } from '../units/symbol.ts'
export { readNumber, type NumberProblem } from '../units/read.ts'
export { write, type WriteOptions } from '../units/write.ts'
