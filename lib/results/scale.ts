/** Where intervals and their limits are drawn. Positions are fractions of the width, 0 at the left. */

/** Where a limit stands in the small drawing, so that the limits of a table align. */
export const limitPosition = 2 / 3

export interface Span {
  value: number
  low: number
  high: number
  limit: number
}

const clamp = (x: number): number => Math.min(1, Math.max(0, x))

/** Positions in units of the limit: 0 is nothing, two thirds the limit, the right edge one and a half limits. */
export function inLimits({ value, low, high, limit }: Span) {
  const at = (x: number) => clamp((x / limit) * limitPosition)
  return { value: at(value), low: at(low), high: at(high), limit: limitPosition, beyond: high > 1.5 * limit }
}

export interface Axis {
  from: number
  to: number
  ticks: number[]
  decimals: number
}

/** The step of 1, 2 or 5 times a power of ten next above `raw`. */
function niceStep(raw: number): { step: number; decimals: number } {
  const power = Math.floor(Math.log10(raw) + 1e-9)
  const lead = raw / 10 ** power
  const digit = lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10
  const decimals = Math.max(0, digit === 10 ? -power - 1 : -power)
  return { step: digit * 10 ** power, decimals }
}

/** An axis with two to six ticks that shows the interval and, when there is one, the limit and what lies beyond it. */
export function axis(low: number, high: number, limit?: number): Axis {
  const least = Math.min(low, limit ?? low)
  const most = Math.max(high, limit ?? high)
  const size = Math.max(Math.abs(most), Math.abs(least)) || 1
  const { step, decimals } = niceStep(Math.max(most - least, 0.3 * size) / 2.5)
  const first = Math.max(least < 0 ? -Infinity : 0, Math.floor((least - 0.05 * step) / step))
  const last = Math.ceil((most + 0.05 * step) / step)
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toFixed(decimals)))
  return { from: first * step, to: last * step, ticks, decimals }
}

/** The position of `x` on an axis. */
export function onAxis(x: number, { from, to }: Pick<Axis, 'from' | 'to'>): number {
  return clamp((x - from) / (to - from))
}
