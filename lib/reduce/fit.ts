/** A straight line through points by ordinary least squares. */

export interface Line {
  slope: number
  intercept: number
  /** Square of the correlation coefficient. */
  correlation: number
  /** Standard deviation of the points about the line, count - 2 degrees of freedom. */
  residual: number
  slopeError: number
  interceptError: number
  count: number
  meanX: number
  /** Sum of the squared distances from `meanX`. */
  sumSquares: number
}

function mean(values: readonly number[]): number {
  let sum = 0
  for (const value of values) sum += value
  const first = sum / values.length
  // A second pass takes up the rounding of the first.
  let rest = 0
  for (const value of values) rest += value - first
  return first + rest / values.length
}

/**
 * Least-squares line, in the centred form that keeps its digits. With three points or more and at least two different x.
 * Source: ASTM E779 Annex A1 and ISO 9972 Annex C (from memory), standard textbook form.
 *
 * @example fitLine([1, 2, 3], [2, 4, 6]).slope // 2
 */
export function fitLine(xs: readonly number[], ys: readonly number[]): Line {
  const count = xs.length
  const meanX = mean(xs)
  const meanY = mean(ys)
  let sumSquares = 0
  let sumY = 0
  let sumProducts = 0
  for (let index = 0; index < count; index++) {
    const dx = xs[index]! - meanX
    const dy = ys[index]! - meanY
    sumSquares += dx * dx
    sumY += dy * dy
    sumProducts += dx * dy
  }
  const slope = sumProducts / sumSquares
  let left = 0
  for (let index = 0; index < count; index++) {
    const off = ys[index]! - meanY - slope * (xs[index]! - meanX)
    left += off * off
  }
  const residual = Math.sqrt(left / (count - 2))
  const slopeError = residual / Math.sqrt(sumSquares)
  return {
    slope,
    intercept: meanY - slope * meanX,
    correlation: sumY > 0 ? Math.max(0, 1 - left / sumY) : 0,
    residual,
    slopeError,
    interceptError: residual * Math.sqrt(1 / count + (meanX * meanX) / sumSquares),
    count,
    meanX,
    sumSquares,
  }
}

/**
 * Standard error of the line's height at x.
 *
 * @example errorAt(fitLine([1, 2, 3], [1, 3, 2]), 2) // 0.7071067811865475
 */
export function errorAt(line: Line, x: number): number {
  return line.residual * Math.sqrt(1 / line.count + (x - line.meanX) ** 2 / line.sumSquares)
}
