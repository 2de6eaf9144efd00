/** Numbers written as text, rounded as a person with a pencil rounds them. */

export interface WriteOptions {
  /** Digits after the decimal mark, 0 to 100. Left out: every digit the number has. */
  decimals?: number | undefined
  /** How a tie is broken: away from zero, or to the even digit. */
  rounding?: 'half-up' | 'half-even' | undefined
  /** Thousands separator, or `true` for the one of `locale`. Left out: none. */
  grouping?: boolean | string | undefined
  /** Decimal mark. Left out: the one of `locale`, else a point. */
  mark?: string | undefined
  /** BCP 47 tag. Digits are always 0 to 9. */
  locale?: string | undefined
}

const formats = new Map<string, Intl.NumberFormat>()

function format(locale: string): Intl.NumberFormat {
  let found = formats.get(locale)
  if (!found) {
    found = new Intl.NumberFormat(locale, { numberingSystem: 'latn', minimumFractionDigits: 1 })
    formats.set(locale, found)
  }
  return found
}

/** The digits of a positive number in its shortest decimal form, and how many of them stand before the point. */
function digitsOf(value: number): { digits: string; whole: number } {
  const [mantissa = '', exponent = '0'] = value.toExponential().split('e')
  return { digits: mantissa.replace('.', ''), whole: Number(exponent) + 1 }
}

function roundsUp(digits: string, keep: number, halfEven: boolean): boolean {
  const next = keep < 0 ? '0' : (digits[keep] ?? '0')
  if (next !== '5') return next > '5'
  if (!halfEven || /[1-9]/.test(digits.slice(keep + 1))) return true
  return Number(digits[keep - 1] ?? '0') % 2 === 1
}

/** Whole and fraction digits of |value|, rounded on its shortest decimal form. */
function rounded(value: number, decimals: number | undefined, halfEven: boolean): [whole: string, fraction: string] {
  const { digits, whole } = digitsOf(Math.abs(value))
  const places = decimals ?? Math.max(0, digits.length - whole)
  const keep = whole + places
  // All digits as one whole number: units of the last place kept.
  let last = BigInt(keep > 0 ? digits.slice(0, keep).padEnd(keep, '0') : '0')
  if (roundsUp(digits, keep, halfEven)) last += 1n
  const text = last.toString().padStart(places + 1, '0')
  return [text.slice(0, text.length - places), text.slice(text.length - places)]
}

function grouped(whole: string, grouping: boolean | string | undefined, locale: string | undefined): string {
  if (!grouping) return whole
  if (grouping === true && locale) {
    const parts = format(locale).formatToParts(BigInt(whole))
    return parts.map(({ type, value }) => (type === 'integer' || type === 'group' ? value : '')).join('')
  }
  return whole.replaceAll(/\B(?=(\d{3})+$)/g, grouping === true ? ',' : grouping)
}

/**
 * A number as text. Rounds the decimal number as it is written, not its binary neighbour; never uses an exponent, and
 * never writes minus zero.
 *
 * @throws RangeError when the number is not finite, `decimals` is not a whole number from 0 to 100, or the decimal
 * mark is empty or the same as the thousands separator
 * @example write(1.005, { decimals: 2 }) // '1.01'
 */
export function write(value: number, options: WriteOptions = {}): string {
  const { decimals, rounding, grouping, locale } = options
  if (!Number.isFinite(value)) throw new RangeError('Only a finite number can be written.')
  if (decimals !== undefined && !(Number.isInteger(decimals) && decimals >= 0 && decimals <= 100)) {
    throw new RangeError('Decimals must be a whole number from 0 to 100.')
  }
  const mark =
    options.mark ??
    (locale
      ? format(locale)
          .formatToParts(0.5)
          .find(({ type }) => type === 'decimal')?.value
      : '.') ??
    '.'
  const alike =
    grouping === true
      ? options.mark !== undefined && grouped('1000000', true, locale).includes(mark)
      : grouping === mark
  if (alike || mark === '') throw new RangeError('Give a decimal mark, unlike the thousands separator.')
  const [whole, fraction] = rounded(value, decimals, rounding === 'half-even')
  const sign = value < 0 && /[1-9]/.test(whole + fraction) ? '-' : ''
  return sign + grouped(whole, grouping, locale) + (fraction && mark + fraction)
}
