/**
 * What a person would call the fields of a PDF form: by the form's own tooltip, else by the words printed beside, above,
 * in or below the field, at the head of its row and column, and over its part of the form.
 */
import type { Box, Field, Widget } from './fields.ts'
import type { Piece } from './pieces.ts'

export interface Called {
  name: string
  section: string
  /** Of each widget of a radio. */
  options: string[]
}

/** A place that wants words: a field, or one option of a radio. */
interface Place {
  field: Field
  widget: Widget
  box: Box
}

const across = (a: Box, b: Box): number => Math.min(a.right, b.right) - Math.max(a.left, b.left)
const along = (a: Box, b: Box): number => Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top)
const height = ({ top, bottom }: Box): number => bottom - top
const middle = ({ top, bottom }: Box): number => (top + bottom) / 2

const marks = new Set(' \t\n:*•·.…_–-')

/** Without the marks that forms put before and behind a label. */
export function bare(text: string): string {
  let [start, end] = [0, text.length]
  while (start < end && text[start] !== '.' && marks.has(text[start]!)) start++
  while (end > start && marks.has(text[end - 1]!)) end--
  return text.slice(start, end)
}

/** Names that a program gave: `Text12`, `topmostSubform[0].Page1[0].f1_01[0]`. */
const generated =
  /^(?:\w*\[\d+\]\.?)+$|^(text|field|check ?box|radio ?button|group|combo ?box|list ?box|drop ?down|undefined|fill|untitled|button|date)[\s_-]*(field)?[\s_-]*\d*(_\w{1,3})?$/i

/** A tooltip that says something. */
export const says = (tooltip: string, name: string): boolean =>
  /\p{L}{2}/u.test(tooltip) && tooltip !== name && !generated.test(tooltip)

/** Whether the words stand on the first line of the box. */
function onLine(piece: Box, box: Box): boolean {
  const first = { ...box, bottom: Math.min(box.bottom, box.top + 2.2 * height(piece)) }
  return along(piece, first) > 0.4 * Math.min(height(piece), height(first))
}

const between = (from: number, to: number, line: Box, all: readonly Box[]): boolean =>
  all.some((other) => other.left >= from - 2 && other.right <= to + 2 && onLine(line, other))

/** How far off words are as a label of a text or list; none where they are none. */
function distance(piece: Piece, box: Box, others: readonly Box[]): number | undefined {
  const inside = across(piece, box) > 0.9 * (piece.right - piece.left) && along(piece, box) > 0.9 * height(piece)
  if (inside) return piece.top - box.top < 0.5 * height(box) || height(box) < 2 * height(piece) ? 0 : undefined
  if (piece.right <= box.left + 4 && onLine(piece, box)) {
    const gap = box.left - piece.right
    return gap < 320 && !between(piece.right, box.left, piece, others) ? 3 + 0.12 * gap : undefined
  }
  const aligned = Math.abs(piece.left - box.left)
  if (across(piece, box) <= 0 || (piece.left < box.left - 40 && aligned > 0.3 * (piece.right - piece.left)))
    return undefined
  const above = box.top - piece.bottom
  if (above > -3 && above < 1.8 * piece.size) {
    const cut = others.some(
      (other) => across(other, box) > 0 && other.top >= piece.bottom - 3 && other.bottom <= box.top + 3,
    )
    return cut ? undefined : 5 + above + 0.25 * aligned
  }
  const below = piece.top - box.bottom
  if (below > -3 && below < 1.2 * piece.size) return 12 + below + 0.25 * aligned
  return undefined
}

/** How far off words are as what stands behind a box to tick. */
function behind(piece: Piece, box: Box, others: readonly Box[]): number | undefined {
  const line = along(piece, box) > 0.4 * Math.min(height(piece), height(box))
  if (!line) return undefined
  if (piece.left >= box.right - 2) {
    const gap = piece.left - box.right
    return gap < 60 && !between(box.right, piece.left, piece, others) ? gap : undefined
  }
  const gap = box.left - piece.right
  return gap > -4 && gap < 40 && !between(piece.right, box.left, piece, others) ? 40 + gap : undefined
}

/** Gives each place its nearest words, the nearest of all first, so that none gets those of its neighbour. */
function nearest(
  places: readonly Place[],
  pieces: readonly Piece[],
  boxes: readonly Box[],
  off: typeof distance,
  taken: Set<Piece>,
): Map<Place, Piece> {
  const pairs = places.flatMap((place) =>
    pieces.flatMap((piece) => {
      if (taken.has(piece)) return []
      const cost = off(
        piece,
        place.box,
        boxes.filter((box) => box !== place.box),
      )
      return cost === undefined ? [] : [{ place, piece, cost }]
    }),
  )
  const found = new Map<Place, Piece>()
  for (const { place, piece } of pairs.toSorted((a, b) => a.cost - b.cost)) {
    if (found.has(place) || taken.has(piece)) continue
    found.set(place, piece)
    taken.add(piece)
  }
  return found
}

const same = (a: number, b: number, room = 5): boolean => Math.abs(a - b) <= room

/** Heads of row and column of the fields that stand in a table: two rows and two columns at least. */
function heads(places: readonly Place[], pieces: readonly Piece[]): Map<Place, { row: Piece; column: Piece }> {
  const found = new Map<Place, { row: Piece; column: Piece }>()
  const boxes = places.map(({ box }) => box)
  for (const place of places) {
    const { box } = place
    const row = places.filter((each) => same(middle(each.box), middle(box))).toSorted((a, b) => a.box.left - b.box.left)
    const column = places
      .filter((each) => same(each.box.left, box.left, 6) && same(each.box.right, box.right, 12))
      .toSorted((a, b) => a.box.top - b.box.top)
    const [first] = row
    if (row.length < 2 || column.length < 2 || !first) continue
    // Words between the fields of a row are their labels.
    const last = row.at(-1)!.box
    if (pieces.some((piece) => onLine(piece, box) && piece.left > first.box.left && piece.right < last.left)) continue
    const before = pieces
      .filter((piece) => piece.right <= first.box.left + 4 && onLine(piece, first.box))
      .toSorted((a, b) => b.right - a.right)[0]
    // The column goes up as far as its rows follow one another.
    let top = box
    for (const { box: each } of column.toReversed())
      if (each.top < top.top && top.top - each.bottom < 2 * height(top)) top = each
    const over = pieces
      .filter(
        (piece) =>
          piece.bottom <= top.top + 3 &&
          top.top - piece.bottom < 3 * height(top) &&
          across(piece, top) > 0 &&
          !boxes.some((each) => across(each, top) > 0 && each.top >= piece.bottom - 2 && each.bottom <= top.top + 2),
      )
      .toSorted((a, b) => b.bottom - a.bottom)[0]
    if (before && over) found.set(place, { row: before, column: over })
  }
  // One column alone has a heading, not a head.
  const columns = new Set([...found.values()].map(({ column }) => column))
  return columns.size > 1 ? found : new Map()
}

const captionWords =
  /^(part|section|teil|abschnitt|parte|sección|seccion|partie|step|schritt|paso|étape)\b|^([A-Z]|[IVX]{1,4}|\d{1,2})[.)]\s+\p{L}/iu
const shouts = (text: string): boolean => /\p{Lu}{3}/u.test(text) && text === text.toLocaleUpperCase()

/** The captions over parts of a page: larger than its other words, or worded as captions are, on a line of their own. */
function captions(pieces: readonly Piece[], taken: ReadonlySet<Piece>, boxes: readonly Box[]): Piece[] {
  const sizes = pieces.map(({ size }) => size).toSorted((a, b) => a - b)
  const usual = sizes[Math.floor(sizes.length / 2)] ?? 0
  return pieces.filter(
    (piece) =>
      !taken.has(piece) &&
      piece.text.length < 90 &&
      !boxes.some(
        (box) => along(box, piece) > 0.5 * height(piece) && box.left > piece.right - 4 && box.left - piece.right < 250,
      ) &&
      (piece.size > 1.12 * usual || captionWords.test(piece.text) || shouts(piece.text)),
  )
}

/** Short words right behind a field that nothing else is called by: mostly its unit. */
function unitBehind(box: Box, pieces: readonly Piece[], taken: ReadonlySet<Piece>): string {
  const piece = pieces.find(
    (each) =>
      !taken.has(each) &&
      each.text.length <= 12 &&
      each.left >= box.right - 2 &&
      each.left - box.right < 14 &&
      onLine(each, box),
  )
  return piece ? bare(piece.text) : ''
}

function around(boxes: readonly Box[]): Box {
  return {
    left: Math.min(...boxes.map(({ left }) => left)),
    top: Math.min(...boxes.map(({ top }) => top)),
    right: Math.max(...boxes.map(({ right }) => right)),
    bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
  }
}

/** The fields of one page; `before` is the caption in force at its top. Gives back the one in force at its foot. */
function onPage(
  number: number,
  fields: readonly Field[],
  pieces: readonly Piece[],
  before: string,
  called: Map<string, Called>,
): string {
  const here = fields.flatMap((field) =>
    field.widgets.filter(({ page }) => page === number).map((widget): Place => ({ field, widget, box: widget.box })),
  )
  const boxes = here.map(({ box }) => box)
  const taken = new Set<Piece>()
  const ticks = here.filter(({ field }) => field.kind === 'tick' || field.kind === 'radio')
  const options = nearest(ticks, pieces, boxes, behind, taken)
  const others = here.filter(({ field }) => field.kind === 'text' || field.kind === 'choice')
  const cells = heads(others, pieces)
  for (const { row, column } of cells.values()) taken.add(row).add(column)
  // A radio is called by what stands before or over all of its options.
  const groups = Map.groupBy(
    ticks.filter(({ field }) => field.kind === 'radio'),
    ({ field }) => field,
  )
  const wholes = [...groups].map(([field, all]): Place => ({
    field,
    widget: all[0]!.widget,
    box: around(all.map(({ box }) => box)),
  }))
  const alone = others.filter((place) => !cells.has(place))
  const labels = nearest([...alone, ...wholes], pieces, [...boxes], distance, taken)
  const over = captions(pieces, taken, boxes).toSorted((a, b) => a.top - b.top)
  const sectionOf = (box: Box): string => {
    const above = over.filter((piece) => piece.bottom <= box.top + 0.5 * height(piece) && piece.left < box.right)
    return above.at(-1) ? bare(above.at(-1)!.text) : before
  }
  for (const field of fields) {
    const [first] = field.widgets
    if (first?.page !== number || called.has(field.name)) continue
    const place = here.find((each) => each.widget === first)!
    const cell = cells.get(place)
    const whole = wholes.find((each) => each.field === field)
    const label = cell?.row ?? labels.get(whole ?? place) ?? options.get(place)
    const printed = bare((field.kind === 'radio' && whole ? labels.get(whole)?.text : label?.text) ?? '')
    const unit = field.kind === 'text' && printed ? unitBehind(first.box, pieces, taken) : ''
    const tooltip = says(field.tooltip, field.name) ? bare(field.tooltip) : ''
    called.set(field.name, {
      name:
        tooltip || (unit ? `${printed}, ${unit}` : printed) || (generated.test(field.name) ? '' : readable(field.name)),
      section: cell ? bare(cell.column.text) : sectionOf((whole ?? place).box),
      options: field.widgets.map((widget) => {
        const beside = here.find((each) => each.widget === widget)
        return bare((beside && options.get(beside)?.text) ?? '') || widget.on
      }),
    })
  }
  return over.at(-1) ? bare(over.at(-1)!.text) : before
}

/** `site.ownerName` as words: `owner Name`. */
const readable = (name: string): string =>
  (name.split('.').at(-1) ?? '')
    .replace(/\[\d+\]$/, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll(/[_-]+/g, ' ')
    .trim()

/**
 * What the fields are called, by their full names.
 * @param pieces the words of each page, the first page first
 */
export function callFields(fields: readonly Field[], pieces: readonly (readonly Piece[])[]): Map<string, Called> {
  const called = new Map<string, Called>()
  let section = ''
  for (const [at, words] of pieces.entries()) section = onPage(at + 1, fields, words, section, called)
  return called
}
