/** The reports of tests as a PDF, a page each: text as text, the plot as vectors. Loaded when asked for. */
import { PDFDocument, StandardFonts } from '@cantoo/pdf-lib'
import type { Test } from '../job/schema.ts'
import { axis, inLimits, onAxis } from '../results/scale.ts'
import type { Content } from './content.ts'
import { type Colour, type Fonts, Pen, type Style } from './pdf-pen.ts'
import { barsBox } from '../results/plot/bars.ts'
import { drawBars } from './pdf-bars.ts'
import { drawPlot } from './pdf-plot.ts'
import { language, say, shown } from '../words/say.ts'
import { asRead } from '../results/in-locale.ts'

export interface ReportPdf {
  bytes: Uint8Array
  /** Letters that the fonts of every PDF reader lack, and that therefore stand without their mark or as a question mark. */
  lost: string[]
}

const sizes = { letter: [612, 792], A4: [595.28, 841.89] } as const
const margin = { across: 40, down: 34 }

/** The paper that is usual where the test was typed. */
export const paperOf = ({ units }: Pick<Test, 'units'>): keyof typeof sizes => (units.length === 'ft' ? 'letter' : 'A4')

/** Writes a page for each report. `paper`: what is usual where it will be printed. */
export async function pdfOf(
  contents: readonly Content[],
  paper: keyof typeof sizes,
  now: Date = new Date(),
): Promise<ReportPdf> {
  const document = await PDFDocument.create()
  const [first] = contents
  if (first) {
    const tests = contents.map(({ role }) => role).join(', ')
    document.setTitle(say`${first.title}: ${first.address}, test ${tests}`)
    document.setAuthor(first.signer.name)
  }
  document.setCreator('Gapsum')
  document.setProducer('Gapsum')
  document.setLanguage(language())
  document.setCreationDate(now)
  document.setModificationDate(now)
  const fonts: Fonts = {
    sans: await document.embedFont(StandardFonts.Helvetica),
    bold: await document.embedFont(StandardFonts.HelveticaBold),
    serif: await document.embedFont(StandardFonts.TimesRoman),
    italic: await document.embedFont(StandardFonts.TimesRomanItalic),
    mono: await document.embedFont(StandardFonts.Courier),
    symbol: await document.embedFont(StandardFonts.Symbol),
  }
  const [width, height] = sizes[paper]
  const across = width - 2 * margin.across
  const room = height - 2 * margin.down
  const origin = { left: margin.across, top: height - margin.down }
  const lost = new Set<string>()
  for (const [at, content] of contents.entries()) {
    const page = document.addPage([width, height])
    const place = say`Page ${at + 1} of ${contents.length}`
    // The largest scale at which all of it fits on the page.
    let scale = 1
    while (scale > 0.6 && scale * draw(new Pen(undefined, fonts, origin, scale), content, place, across / scale) > room)
      scale -= 0.02
    const pen = new Pen(page, fonts, origin, scale)
    draw(pen, content, place, across / scale)
    for (const letter of pen.lost) lost.add(letter)
  }
  return { bytes: await document.save(), lost: [...lost] }
}

/** Draws everything; gives how far down it reaches. */
function draw(pen: Pen, content: Content, place: string, width: number): number {
  let y = head(pen, content, place, width)
  y = facts(pen, content, width, y)
  y = verdict(pen, content, width, y)
  const half = width * 0.455
  const below = readings(pen, content, half, y)
  const plotScale = (width - half - 18) / 400
  if (content.plot) drawPlot(pen.within(half + 18, y + 8, plotScale), content.plot)
  y = Math.max(below, content.plot ? y + 8 + 272 * plotScale : 0)
  if (content.bars) {
    y = heading(pen, say`Before and after`, content.bars.title, y + 18)
    const barScale = 0.62
    drawBars(pen.within(0, y, barScale), content.bars)
    y += barsBox.height * barScale
  }
  y = figures(pen, content, width, y)
  y = sentences(pen, say`Tests together`, content.several, width, y)
  y = sentences(pen, say`Zones beside the house`, content.zones, width, y)
  y = sentences(pen, say`Notes`, content.notes, width, y)
  y = checks(pen, content, width, y)
  y = pen.wrapped(content.cautions, 0, y + 11, width, { size: 7.5, colour: 'quiet' })
  return foot(pen, content, width, y)
}

function head(pen: Pen, { title, address, role, tested }: Content, place: string, width: number): number {
  pen.text(title, 0, 18, { face: 'serif', size: 20 })
  pen.text(tested, width, 17, { colour: 'quiet', align: 'right' })
  const y = pen.wrapped(say`${address}. Test: ${role}.`, 0, 32, width - 70, { colour: 'quiet', most: 2 })
  pen.text(place, width, 32, { colour: 'quiet', align: 'right' })
  pen.line(0, y - 4, width, y - 4, 'ink', 1.1)
  return y - 4
}

function facts(pen: Pen, content: Content, width: number, from: number): number {
  const column = width / 4
  let y = from + 11
  for (let first = 0; first < content.facts.length; first += 4) {
    const ends = content.facts.slice(first, first + 4).map(({ label, value }, at) => {
      const x = at * column
      pen.text(label, x, y, { size: 7, colour: 'quiet' })
      return pen.wrapped(value, x, y + 10, column - 10, { size: 8.5, most: 2 })
    })
    y = Math.max(...ends) + 2
  }
  pen.line(0, y - 6, width, y - 6, 'ink', 1.1)
  return y - 6
}

function verdict(pen: Pen, { verdict: found, waiting }: Content, width: number, from: number): number {
  if (!found) {
    const y = pen.wrapped(say`No figures yet. ${waiting}`, 0, from + 16, width)
    pen.line(0, y, width, y, 'ink', 1.1)
    return y
  }
  const wide = pen.text(found.value, 0, from + 32, { face: 'serif', size: 28 })
  const margined = found.margin
    ? `${found.margin.startsWith('−') ? '' : '± '}${found.margin} ${found.unit}`
    : found.unit
  const side = pen.text(margined, 0, from + 46, { colour: 'quiet' })
  const x = Math.max(wide, side) + 18
  const drawing = found.interval ? 150 : 0
  const room = width - x - drawing - (drawing ? 18 : 0)
  let y = from + 17
  if (found.verdict) {
    mark(pen, found.verdict.meets ? 'good' : 'bad', x, y - 8.5, 10)
    y = pen.wrapped(found.verdict.text, x + 15, y, room - 15, {
      face: 'bold',
      size: 11,
      colour: found.verdict.meets ? 'ink' : 'bad',
    })
  }
  const words = [found.likely, found.reach, ...found.notes, found.source].filter(Boolean).join(' ')
  y = pen.wrapped(words, x, y - 2, room, { size: 7.5, colour: 'quiet' })
  if (found.interval) interval(pen.within(width - drawing, from + 14, 1), found.interval, drawing)
  const end = Math.max(y, from + 52)
  pen.line(0, end, width, end, 'ink', 1.1)
  return end
}

function interval(
  pen: Pen,
  { value, low, high, limit }: NonNullable<NonNullable<Content['verdict']>['interval']>,
  width: number,
) {
  const scale = axis(low, high, limit)
  const at = (x: number) => width * onAxis(x, scale)
  if (limit !== undefined) pen.hatch(at(limit), 2, width - at(limit), 14)
  pen.line(0, 17, width, 17, 'field')
  scale.ticks.forEach((tick, i) => {
    pen.line(at(tick), 17, at(tick), 20.5, 'field')
    const align = i === 0 ? 'left' : i === scale.ticks.length - 1 ? 'right' : 'middle'
    pen.text(asRead(tick.toFixed(scale.decimals)), at(tick), 29, { size: 7.5, colour: 'quiet', align })
  })
  pen.line(at(low), 9, at(high), 9, 'ink', 1.5)
  for (const end of [low, high]) pen.line(at(end), 5.5, at(end), 12.5, 'ink', 1.5)
  if (limit !== undefined) pen.line(at(limit), 0, at(limit), 20, 'ink', 1.5)
  pen.dot(at(value), 9, 3.2, 'ink')
}

function heading(pen: Pen, title: string, note: string, y: number): number {
  const width = pen.text(title, 0, y, { face: 'serif', size: 13 })
  if (note) pen.text(note, width + 6, y, { size: 7.5, colour: 'quiet' })
  return y + 5
}

function readings(pen: Pen, { readings: { heads, rows, foot: lines } }: Content, width: number, from: number): number {
  let y = heading(pen, say`Readings`, '', from + 17)
  pen.line(0, y, width, y, 'ink', 1.1)
  const first = 12
  const column = (width - first) / (heads.length - 1)
  const right = (at: number) => (at === 0 ? first - 2 : first + at * column)
  heads.forEach(([name, unit], at) => {
    const style = { size: 7, colour: 'quiet', align: 'right' } as const
    if (name === 'ΔP') {
      const p = pen.text('P', right(at), y + 9, { ...style, face: 'italic', size: 8 })
      pen.text('Δ', right(at) - p, y + 9, { ...style, face: 'symbol' })
    } else pen.text(name, right(at), y + 9, style)
    pen.text(unit, right(at), y + 17, style)
  })
  y += 21
  pen.line(0, y, width, y, 'ink', 0.5)
  for (const cells of rows) {
    cells.forEach((cell, at) => {
      const colour = at === 0 ? 'quiet' : 'ink'
      pen.text(shortened(pen, cell, column - 4), right(at), y + 9.5, { colour, align: 'right' })
    })
    y += 12.8
    pen.line(0, y, width, y, 'rule', 0.5)
  }
  pen.line(0, y, width, y, 'ink', 0.5)
  for (const line of lines) y = pen.wrapped(line, 0, y + 9, width, { size: 7.5, colour: 'quiet' }) - 9
  pen.line(0, y + 3, width, y + 3, 'ink', 1.1)
  return y + 3
}

function shortened(pen: Pen, text: string, width: number, style: Style = {}): string {
  const [first = ''] = pen.lines(text, width, style)
  return first.length < text.length ? `${first.slice(0, -1)}…` : text
}

function figures(pen: Pen, content: Content, width: number, from: number): number {
  if (content.figures.length === 0) return from
  const ends = { value: width * 0.5, margin: width * 0.655, unit: width * 0.675, bar: width - 112 }
  let y = heading(pen, say`Figures`, content.figuresNote, from + 18)
  pen.line(0, y, width, y, 'ink', 1.1)
  const quiet = { size: 7, colour: 'quiet' } as const
  pen.text(say`Figure`, 0, y + 9, quiet)
  pen.text(say`Value`, ends.value, y + 9, { ...quiet, align: 'right' })
  pen.text('±', ends.margin, y + 9, { ...quiet, align: 'right' })
  pen.text(say`Unit`, ends.unit, y + 9, quiet)
  pen.text(content.limitHead, ends.bar, y + 9, quiet)
  y += 12.5
  pen.line(0, y, width, y, 'ink', 0.5)
  for (const { name, detail, value, margin: plusMinus, unit, span } of content.figures) {
    const at = y + 9.5
    const wide = pen.text(name, 0, at)
    if (detail)
      pen.text(detail, wide + 4, at, detail.length === 1 ? { face: 'italic', size: 9.5 } : { colour: 'quiet' })
    pen.text(value, ends.value, at, { face: 'bold', align: 'right' })
    pen.text(plusMinus, ends.margin, at, { colour: 'quiet', align: 'right' })
    pen.text(unit, ends.unit, at, { colour: 'quiet' })
    if (span) bar(pen.within(ends.bar, y, 1), span, 112)
    y += 12.8
    pen.line(0, y, width, y, 'rule', 0.5)
  }
  pen.line(0, y, width, y, 'ink', 1.1)
  return y
}

function bar(pen: Pen, span: NonNullable<Content['figures'][number]['span']>, width: number): void {
  const { value, low, high, limit, beyond } = inLimits(span)
  pen.hatch(limit * width, 2, (1 - limit) * width, 9)
  pen.line(0, 6.5, limit * width, 6.5, 'rule')
  pen.line(low * width, 6.5, high * width, 6.5, 'ink', 1.4)
  pen.line(low * width, 4, low * width, 9, 'ink', 1.2)
  if (!beyond) pen.line(high * width, 4, high * width, 9, 'ink', 1.2)
  pen.line(limit * width, 0.5, limit * width, 12.3, 'ink', 1.2)
  pen.dot(value * width, 6.5, 2.3, 'ink')
}

function sentences(pen: Pen, title: string, texts: readonly string[], width: number, from: number): number {
  if (texts.length === 0) return from
  let y = heading(pen, title, '', from + 18) + 6
  for (const text of texts) y = pen.wrapped(text, 0, y, width, { size: 7.5 })
  return y
}

function checks(pen: Pen, content: Content, width: number, from: number): number {
  if (content.checks.length === 0) return from
  let y = heading(pen, say`Checks`, '', from + 18)
  pen.line(0, y, width, y, 'ink', 1.1)
  const column = width / 2 - 10
  const ends = [y + 2, y + 2]
  const perColumn = Math.ceil(content.checks.length / 2)
  content.checks.forEach(({ outcome, name, found = '' }, index) => {
    const at = index < perColumn ? 0 : 1
    const x = at * (column + 20)
    const colour: Colour =
      outcome === 'bad' ? 'bad' : outcome === 'doubtful' ? 'doubt' : outcome === 'good' ? 'ink' : 'quiet'
    const face = outcome === 'bad' || outcome === 'doubtful' ? 'bold' : 'sans'
    const line = ends[at]! + 9
    mark(pen, outcome, x, line - 7, 8)
    const words = outcome === 'good' ? name : `${name}, ${shown(outcome)}`
    const wide = pen.text(words, x + 13, line, { face, colour, size: 8 })
    const room = column - 13 - wide - 8
    const lines = pen.lines(found, room, { size: 7.5 })
    lines.forEach((part, i) => pen.text(part, x + column, line + i * 9, { size: 7.5, colour: 'quiet', align: 'right' }))
    ends[at] = line + 2.5 + Math.max(0, lines.length - 1) * 9
  })
  y = Math.max(...ends) + 2
  pen.line(0, y, width, y, 'ink', 1.1)
  if (content.remarks.length === 0) return y
  return pen.wrapped(content.remarks.join(' '), 0, y + 10, width, { size: 7.5 }) - 9
}

const shapes = {
  good: ['M1.4 8a6.6 6.6 0 1 0 13.2 0a6.6 6.6 0 1 0 -13.2 0Z', 'M5 8.2l2.1 2.1L11.2 6'],
  doubtful: ['M8 1.8l6.7 12H1.3Z', 'M8 6v4M8 11.2v1.4'],
  bad: ['M1.5 1.5h13v13h-13Z', 'M5 5l6 6M11 5l-6 6'],
  'not checked': ['M1.4 8a6.6 6.6 0 1 0 13.2 0a6.6 6.6 0 1 0 -13.2 0Z'],
} as const

function mark(pen: Pen, outcome: keyof typeof shapes, x: number, y: number, size: number): void {
  const stroke: Colour =
    outcome === 'bad' ? 'bad' : outcome === 'doubtful' ? 'doubt' : outcome === 'good' ? 'ink' : 'quiet'
  for (const path of shapes[outcome]) {
    pen.path(path, { x, y, size: size / 16, stroke, width: 0.7, ...(outcome === 'not checked' && { dash: [2, 2] }) })
  }
}

function foot(pen: Pen, { signer, fingerprint, record }: Content, width: number, from: number): number {
  const places = [
    { x: 0, width: width * 0.42, name: '', label: say`Signature` },
    {
      x: width * 0.455,
      width: width * 0.29,
      name: signer.name,
      label: signer.licence ? say`Printed name, licence ${signer.licence}` : say`Printed name`,
    },
    { x: width * 0.78, width: width * 0.22, name: '', label: say`Date` },
  ]
  const y = from + 22
  const name = { face: 'serif', size: 11 } as const
  const label = { size: 7.5, colour: 'quiet' } as const
  for (const place of places) {
    pen.text(shortened(pen, place.name, place.width, name), place.x, y - 4, name)
    pen.line(place.x, y, place.x + place.width, y, 'ink', 0.6)
    pen.text(shortened(pen, place.label, place.width, label), place.x, y + 9, label)
  }
  pen.line(0, y + 15, width, y + 15, 'rule', 0.6)
  const mono = { face: 'mono', size: 7.5, colour: 'quiet' } as const
  if (fingerprint.length > 0) {
    const indent = pen.text(`${say`Fingerprint`} `, 0, y + 25, mono)
    pen.text(fingerprint.slice(0, 4).join(' '), indent, y + 25, mono)
    pen.text(fingerprint.slice(4).join(' '), indent, y + 34, mono)
  }
  record.forEach((line, at) => pen.text(line, width, y + 25 + 9 * at, { ...mono, align: 'right' }))
  return y + 37
}
