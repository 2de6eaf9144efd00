/** Which decimal mark numbers that were written down together have. */

/** `comma` or `point`: that decimal mark and not the other; `both`: one in one, the other in another. */
export type Marks = 'comma' | 'point' | 'both' | undefined

/** Digits, then a comma that cannot part thousands: not before exactly three digits, or after a lone zero. */
const comma = /^(?:\d*,(?:\d{1,2}|\d{4,})|0,\d{3}|\d{1,3}(?:[.'’\s\u00A0\u2009\u202F]\d{3})+,\d+)$/
const point = /^(?:\d*\.(?:\d{1,2}|\d{4,})|0\.\d{3}|\d{1,3}(?:[,'’\s\u00A0\u2009\u202F]\d{3})+\.\d+)$/

/**
 * What cells tell about their decimal mark; nothing where none has one that cannot part thousands.
 *
 * @example marksOf(['-50,2', '1.230']) // 'comma'
 */
export function marksOf(texts: readonly string[]): Marks {
  const bodies = texts.map((text) =>
    text
      .trim()
      .replace(/^[-−–+]\s*/, '')
      .replace(/\s*[^\d.,'’\s].*$/u, ''),
  )
  const [commas, points] = [comma, point].map((mark) => bodies.some((body) => mark.test(body)))
  if (commas && points) return 'both'
  return commas ? 'comma' : points ? 'point' : undefined
}
