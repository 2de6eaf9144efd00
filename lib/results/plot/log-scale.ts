/** A logarithmic axis: where a number stands, and which numbers are written at it. */

export interface LogScale {
  from: number
  to: number
  /** Position of a number between `start` and `end`. */
  at(value: number): number
  ticks: number[]
}

const steps: readonly (readonly number[])[] = [
  [1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 9],
  [1, 2, 3, 4, 5, 6, 7, 8, 9],
  [1, 2, 3, 5, 7],
  [1, 2, 5],
  [1],
]

function ticksWith(leads: readonly number[], from: number, to: number): number[] {
  const ticks: number[] = []
  for (let power = Math.floor(Math.log10(from)); power <= Math.ceil(Math.log10(to)); power++) {
    for (const lead of leads) {
      const tick = Number((lead * 10 ** power).toPrecision(3))
      if (tick >= from && tick <= to) ticks.push(tick)
    }
  }
  return ticks
}

/**
 * An axis from `from` to `to`, both above zero, drawn from `start` to `end`, with as many ticks as `most` allows.
 *
 * @example logScale(10, 1000, 0, 100, 8).at(100) // 50
 */
export function logScale(from: number, to: number, start: number, end: number, most: number): LogScale {
  const span = Math.log(to / from)
  const choices = steps.map((leads) => ticksWith(leads, from, to))
  return {
    from,
    to,
    at: (value) => start + ((end - start) * Math.log(value / from)) / span,
    ticks: choices.find(({ length }) => length <= most) ?? choices.at(-1)!.slice(0, most),
  }
}
