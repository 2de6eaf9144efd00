/**
 * How much of anything is taken in, in one table: what writes keeps to it, and what reads takes all that it allows.
 * Texts are counted in UTF-16 code units, records in bytes of JSON. Each stands by itself too, for the scripts that are
 * put into pages hold only what they use.
 */

/** A label, a heading, an option, a placeholder, what the page says is wrong, the title of a page. */
export const mostLabel = 500
/** What is read of an element before it is cut to a label. */
export const mostRead = 5000
/** A value of an attribute by which a control is found again; a longer one names nothing. */
export const mostAttribute = 200
/** Controls that are looked at for a plan: no form that a person fills has more. */
export const mostControls = 20_000
/** Controls that are listed while mapping, and that a frame of another origin tells of. */
export const mostListed = 5000
/** A text that goes into a control, and one that is kept of what a control held. */
export const mostValue = 50_000

export const bounds = {
  label: mostLabel,
  read: mostRead,
  attribute: mostAttribute,
  controls: mostControls,
  listed: mostListed,
  value: mostValue,
  /** Why a line ended as it did. */
  note: 2000,
  /** Bindings of a form map, lines of a fill. */
  lines: 2000,
  /** What the helper tells the background, without the files that go into file controls. */
  message: 4_000_000,
  /** A job, a form map, a device, an entry. */
  record: 24_000_000,
  /** Bytes of a photo or document. */
  attachment: 20_000_000,
  /** Bytes of a line of a book file: a record or an attachment in base 64, with its seal. */
  line: 64_000_000,
} as const

/** The text, or its beginning with a sign that more stood there; never half a character. */
export function cut(text: string, most: number = mostLabel): string {
  if (text.length <= most) return text
  const end = text.slice(0, most - 1)
  return `${/[\uD800-\uDBFF]$/.test(end) ? end.slice(0, -1) : end}…`
}
