/** A straight line through points that are uncertain in both directions: the weighted line of organic correlation. */

/** `ux` and `uy` are standard uncertainties of this point alone, zero or more, one of them above zero. */
export interface UncertainPoint {
  x: number
  y: number
  ux: number
  uy: number
}

export interface OrganicLine {
  slope: number
  /** Height at x = 0. */
  intercept: number
  slopeError: number
  interceptError: number
  /** Of slope and intercept. */
  covariance: number
  /** The weighted middle of the points, through which the line goes. */
  meanX: number
  meanY: number
  count: number
  /**
   * Weighted squares of the points' distances from the line over `count - 2`: about 1 where the points scatter as much as
   * their uncertainties say, more where they scatter more; 0 with two points.
   */
  scatter: number
  /** What the slope changes by when one point moves by 1 in x, or in y; and what each point has in `meanX` and `meanY`. */
  byX: number[]
  byY: number[]
  share: number[]
}

/** A start this near to the next step is the line. */
const close = 1e-14
const mostTurns = 200

interface Middle {
  meanX: number
  meanY: number
  /** Weighted squares about the middle. */
  squaresX: number
  squaresY: number
  products: number
  /** Sum of the weights. */
  weight: number
}

const weightOf = ({ ux, uy }: UncertainPoint, slope: number): number => 1 / (uy * uy + slope * slope * ux * ux)

function middleOf(points: readonly UncertainPoint[], slope: number): Middle {
  let [weight, sumX, sumY] = [0, 0, 0]
  for (const point of points) {
    const own = weightOf(point, slope)
    weight += own
    sumX += own * point.x
    sumY += own * point.y
  }
  const [meanX, meanY] = [sumX / weight, sumY / weight]
  let [squaresX, squaresY, products] = [0, 0, 0]
  for (const point of points) {
    const own = weightOf(point, slope)
    const [x, y] = [point.x - meanX, point.y - meanY]
    squaresX += own * x * x
    squaresY += own * y * y
    products += own * x * y
  }
  return { meanX, meanY, squaresX, squaresY, products, weight }
}

/**
 * The weighted line of organic correlation. It goes through the weighted middle of the points with the slope
 *
 *     b = sign × √(Σ w (y − ȳ)² / Σ w (x − x̄)²),  w = 1 / (uy² + b² ux²)
 *
 * found by repeating it until b stands still. With one weight for all points it is the line of organic correlation,
 * the ratio of the two standard deviations. Standard uncertainties are those of `ux` and `uy` carried through to the
 * line with the weights held as they are (JCGM 100, 5.1.2), each point independent of the others; what points have in
 * common is carried through with {@link shiftAt}.
 *
 * Source: for the use on leakage tests: Delmotte, AIVC and ASHRAE IAQ 2016, and Kölsch and others, Building and
 * Environment 2020 (abstracts read); the equations: derived here from the line of organic correlation as textbooks of
 * statistics have it, with the weights of a line with errors in both directions (York and others, Am. J. Phys. 72, 2004;
 * from memory).
 *
 * @param points two or more, at two different x or more
 * @throws RangeError when a point has no uncertainty, when no line can be laid through the points, or when b does not come
 *   to stand still
 * @example wlocLine([{ x: 0, y: 1, ux: 0.1, uy: 0.1 }, { x: 2, y: 5, ux: 0.1, uy: 0.1 }]).slope // 2
 */
export function wlocLine(points: readonly UncertainPoint[]): OrganicLine {
  if (points.some(({ ux, uy }) => !(ux >= 0 && uy >= 0 && ux + uy > 0)))
    throw new RangeError('wlocLine: a point has no uncertainty')
  let slope = slopeOf(middleOf(points, 1))
  for (let turn = 0; ; turn++) {
    const next = slopeOf(middleOf(points, slope))
    const moved = Math.abs(next - slope)
    slope = next
    if (moved <= close * Math.abs(slope)) break
    if (turn === mostTurns) throw new RangeError('wlocLine: the slope does not come to stand still')
  }
  return lineOf(points, slope)
}

function slopeOf({ squaresX, squaresY, products }: Middle): number {
  const slope = Math.sign(products) * Math.sqrt(squaresY / squaresX)
  if (!Number.isFinite(slope) || slope === 0) throw new RangeError('wlocLine: no line goes through these points')
  return slope
}

function lineOf(points: readonly UncertainPoint[], slope: number): OrganicLine {
  const { meanX, meanY, squaresX, squaresY, weight } = middleOf(points, slope)
  const share = points.map((point) => weightOf(point, slope) / weight)
  const byX = points.map(({ x }, at) => (-slope * share[at]! * weight * (x - meanX)) / squaresX)
  const byY = points.map(({ y }, at) => (slope * share[at]! * weight * (y - meanY)) / squaresY)
  let [slopeSquare, interceptSquare, covariance, off] = [0, 0, 0, 0]
  for (const [at, { x, y, ux, uy }] of points.entries()) {
    const toX = -slope * share[at]! - meanX * byX[at]!
    const toY = share[at]! - meanX * byY[at]!
    slopeSquare += (byX[at]! * ux) ** 2 + (byY[at]! * uy) ** 2
    interceptSquare += (toX * ux) ** 2 + (toY * uy) ** 2
    covariance += byX[at]! * toX * ux * ux + byY[at]! * toY * uy * uy
    off += share[at]! * weight * (y - meanY - slope * (x - meanX)) ** 2
  }
  const count = points.length
  return {
    slope,
    intercept: meanY - slope * meanX,
    slopeError: Math.sqrt(slopeSquare),
    interceptError: Math.sqrt(interceptSquare),
    covariance,
    meanX,
    meanY,
    count,
    scatter: count > 2 ? off / (count - 2) : 0,
    byX,
    byY,
    share,
  }
}

/**
 * Standard uncertainty of the line's height at x, of the points' own uncertainties. Source: JCGM 100, 5.2.2.
 *
 * @example heightError(wlocLine([{ x: 0, y: 1, ux: 0, uy: 0.1 }, { x: 2, y: 5, ux: 0, uy: 0.1 }]), 2).toFixed(3) // '0.100'
 */
export function heightError({ slopeError, interceptError, covariance }: OrganicLine, x: number): number {
  return Math.sqrt(Math.max(0, interceptError ** 2 + 2 * x * covariance + (x * slopeError) ** 2))
}

/**
 * What the line's height at x changes by when its points move together: the first order of JCGM 100, 5.1.2, for an error
 * that several points have in common.
 *
 * @param dx how far each point moves in x
 * @param dy and in y
 * @example shiftAt(wlocLine([{ x: 0, y: 1, ux: 0.1, uy: 0.1 }, { x: 2, y: 5, ux: 0.1, uy: 0.1 }]), 7, [0, 0], [0.3, 0.3]).toFixed(1) // '0.3'
 */
export function shiftAt(line: OrganicLine, x: number, dx: readonly number[], dy: readonly number[]): number {
  const { slope, meanX, share, byX, byY } = line
  return share.reduce(
    (sum, one, at) => sum + one * (dy[at]! - slope * dx[at]!) + (x - meanX) * (byX[at]! * dx[at]! + byY[at]! * dy[at]!),
    0,
  )
}
