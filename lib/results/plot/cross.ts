const arm = 3.4

/** The path of the sign for a reading that was left out. */
export const cross = (x: number, y: number): string =>
  `M${(x - arm).toFixed(1)} ${(y - arm).toFixed(1)}l${2 * arm} ${2 * arm}m0 ${-2 * arm}l${-2 * arm} ${2 * arm}`
