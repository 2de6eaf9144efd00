/** Writing and reading dates in a page's own order. Patterns use the fields y, M and d of Unicode TR 35. */

const field = /y+|M+|d+/g

/**
 * Writes an ISO date (YYYY-MM-DD) by a pattern such as `MM/dd/yyyy`: year, month and day at most once each, in numbers, and
 * no other Latin letter. Nothing when it is no ISO date, or the pattern is none: names of months are of no known language.
 *
 * @example writeDate('2026-02-11', 'MMM d, yyyy') // undefined
 */
export function writeDate(iso: string, pattern: string): string | undefined {
  const [y, M, d] = iso.split('-')
  const left: Record<string, string | undefined> = { y, M, d }
  const text = pattern.replace(field, (name) => {
    const kind = name.charAt(0)
    const value = left[kind] ?? ''
    left[kind] = ''
    // A letter that stays tells that it is no pattern.
    return value.length < name.length ? name : name === 'yy' ? value.slice(2) : name[1] ? value : String(Number(value))
  })
  return text === pattern || /[a-z]/i.test(text) ? undefined : text
}

/** Whether a date can be written by a pattern. */
export const isPattern = (pattern: string): boolean => writeDate('2026-02-01', pattern) !== undefined

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
