/** Writing and reading dates in a page's own order. Patterns use the fields y, M and d of Unicode TR 35. */

const field = /yyyy|yy|y|MM|M|dd|d/g

function short(digits: string): string {
  return String(Number(digits))
}

/** Writes an ISO date (YYYY-MM-DD) by a pattern such as `MM/dd/yyyy`; nothing when it is not an ISO date. */
export function writeDate(iso: string, pattern: string): string | undefined {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso)
  if (!parts) return undefined
  const [, year = '', month = '', day = ''] = parts
  const values: Record<string, string> = {
    yyyy: year,
    y: year,
    yy: year.slice(2),
    MM: month,
    M: short(month),
    dd: day,
    d: short(day),
  }
  return pattern.replace(field, (name) => values[name] ?? name)
}

/** Reads a date that was written by the pattern, leading zeros or not; nothing when it does not fit. */
export function readDate(text: string, pattern: string): string | undefined {
  const names: string[] = []
  const escaped = pattern.replace(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`).replace(field, (name) => {
    names.push(name.charAt(0))
    return name === 'yyyy' || name === 'y' ? String.raw`(\d{4})` : String.raw`(\d{1,2})`
  })
  const found = new RegExp(`^${escaped}$`).exec(text.trim())
  if (!found) return undefined
  const value = (name: string) => found[names.indexOf(name) + 1] ?? ''
  const year = value('y').length === 2 ? `20${value('y')}` : value('y')
  return `${year}-${value('M').padStart(2, '0')}-${value('d').padStart(2, '0')}`
}

/** The pattern that a placeholder or label shows, such as `MM/DD/YYYY` or `dd.mm.yyyy`. */
export function patternIn(text: string): string | undefined {
  const found = /\b(y{2,4}|m{1,2}|d{1,2})([-/. ])(y{2,4}|m{1,2}|d{1,2})\2(y{2,4}|m{1,2}|d{1,2})\b/i.exec(text)
  if (!found) return undefined
  const parts = [found[1] ?? '', found[3] ?? '', found[4] ?? '']
  const order = parts.map((part) => part.charAt(0).toLowerCase())
  if (new Set(order).size !== 3) return undefined
  return parts
    .map((part) => (part.charAt(0).toLowerCase() === 'm' ? part.toUpperCase() : part.toLowerCase()))
    .join(found[2])
}
