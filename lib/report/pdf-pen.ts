/** Writes and draws on a page of a PDF from its upper left corner, in points, downwards. */
import { degrees, rgb, type PDFFont, type PDFPage } from '@cantoo/pdf-lib'

export const colours = {
  ink: rgb(0.106, 0.098, 0.118),
  quiet: rgb(0.345, 0.325, 0.369),
  rule: rgb(0.863, 0.847, 0.878),
  field: rgb(0.522, 0.498, 0.549),
  accent: rgb(0.396, 0.102, 0.294),
  band: rgb(0.878, 0.82, 0.859),
  over: rgb(0.788, 0.765, 0.812),
  doubt: rgb(0.467, 0.29, 0),
  bad: rgb(0.627, 0.071, 0.125),
  paper: rgb(1, 1, 1),
}
export type Colour = keyof typeof colours

export interface Fonts {
  sans: PDFFont
  bold: PDFFont
  serif: PDFFont
  italic: PDFFont
  mono: PDFFont
  symbol: PDFFont
}
export type Face = keyof Fonts

export interface Style {
  face?: Face
  size?: number
  colour?: Colour
  align?: 'left' | 'right' | 'middle'
  /** Degrees, against the clock. */
  turn?: number
}

/** What the fonts that every reader of PDF has cannot write, in letters that they can. */
const others: Readonly<Record<string, string>> = {
  '−': '–',
  ⁿ: '^n',
  '☐': '[  ]',
  '₂': '2',
  '≤': '<=',
  '≥': '>=',
  '\u202F': ' ',
  '\u2009': ' ',
}

export class Pen {
  /** Letters that could not be written. */
  readonly lost = new Set<string>()
  private readonly page: PDFPage | undefined
  private readonly fonts: Fonts
  private readonly origin: { left: number; top: number }
  private readonly scale: number
  private readonly letters: ReadonlySet<number>

  /** Without a page nothing is drawn; everything is measured. */
  constructor(page: PDFPage | undefined, fonts: Fonts, origin: { left: number; top: number }, scale: number) {
    this.page = page
    this.fonts = fonts
    this.origin = origin
    this.scale = scale
    this.letters = new Set(fonts.sans.getCharacterSet())
  }

  /** A pen whose corner lies at a place of this one, smaller by `scale`. */
  within(x: number, y: number, scale: number): Pen {
    return new Pen(this.page, this.fonts, { left: this.x(x), top: this.y(y) }, this.scale * scale)
  }

  private x = (x: number): number => this.origin.left + x * this.scale
  private y = (y: number): number => this.origin.top - y * this.scale

  /** A text in letters that the fonts have. A letter with a mark that they lack loses the mark. */
  private writable(text: string): string {
    const known = text.replaceAll(/[−ⁿ☐₂≤≥\u202F\u2009]/g, (letter) => others[letter] ?? letter).replaceAll(/\s/g, ' ')
    let written = ''
    for (const letter of known) {
      if (this.letters.has(letter.codePointAt(0)!)) {
        written += letter
        continue
      }
      this.lost.add(letter)
      const bare = [...letter.normalize('NFKD')].find((part) => this.letters.has(part.codePointAt(0)!))
      written += bare ?? '?'
    }
    return written
  }

  width(text: string, { face = 'sans', size = 8.5 }: Style = {}): number {
    return this.fonts[face].widthOfTextAtSize(face === 'symbol' ? text : this.writable(text), size)
  }

  /** Writes one line on the line at `y`; gives its width. */
  text(text: string, x: number, y: number, style: Style = {}): number {
    const { face = 'sans', size = 8.5, colour = 'ink', align = 'left', turn = 0 } = style
    const width = this.width(text, style)
    const from = align === 'left' ? 0 : align === 'right' ? width : width / 2
    const upward = turn * (Math.PI / 180)
    const written = face === 'symbol' ? text : this.writable(text)
    if (written === '') return 0
    this.page?.drawText(written, {
      x: this.x(x - from * Math.cos(upward)),
      y: this.y(y + from * Math.sin(upward)),
      size: size * this.scale,
      font: this.fonts[face],
      color: colours[colour],
      rotate: degrees(turn),
    })
    return width
  }

  /** The lines that a text takes in a width; a word that is too long is cut. */
  lines(text: string, width: number, style: Style = {}): string[] {
    const lines: string[] = []
    let line = ''
    for (const word of text.split(/\s+/).flatMap((one) => this.cut(one, width, style))) {
      const longer = line === '' ? word : `${line} ${word}`
      if (line === '' || this.width(longer, style) <= width) line = longer
      else {
        lines.push(line)
        line = word
      }
    }
    return line === '' ? lines : [...lines, line]
  }

  private cut(word: string, width: number, style: Style): string[] {
    if (this.width(word, style) <= width) return [word]
    const parts: string[] = []
    let part = ''
    for (const letter of word) {
      if (part !== '' && this.width(part + letter, style) > width) {
        parts.push(part)
        part = ''
      }
      part += letter
    }
    return [...parts, part]
  }

  /** Writes a text in as many lines as it needs, at most `most`; gives where the next line would stand. */
  wrapped(
    text: string,
    x: number,
    y: number,
    width: number,
    style: Style & { lead?: number; most?: number } = {},
  ): number {
    const { lead = (style.size ?? 8.5) * 1.28, most = Infinity } = style
    const all = this.lines(text, width, style)
    const shown = all.slice(0, most)
    if (all.length > shown.length) shown[most - 1] += ' …'
    shown.forEach((line, at) => this.text(line, x, y + at * lead, style))
    return y + shown.length * lead
  }

  /** A path of SVG, filled or drawn. */
  path(
    path: string,
    style: { fill?: Colour; stroke?: Colour; width?: number; dash?: number[]; x?: number; y?: number; size?: number },
  ): void {
    const { fill, stroke, width = 0.75, dash, x = 0, y = 0, size = 1 } = style
    const scale = this.scale * size
    this.page?.drawSvgPath(path, {
      x: this.x(x),
      y: this.y(y),
      scale,
      ...(fill && { color: colours[fill] }),
      // The library scales the width of a line as it does the path.
      ...(stroke && { borderColor: colours[stroke], borderWidth: width / size }),
      ...(dash && { borderDashArray: dash }),
    })
  }

  line(x: number, y: number, toX: number, toY: number, stroke: Colour = 'ink', width = 0.75): void {
    this.path(`M${x} ${y}L${toX} ${toY}`, { stroke, width })
  }

  dot(x: number, y: number, radius: number, fill: Colour, stroke?: Colour): void {
    const r = radius
    const circle = `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`
    this.path(circle, { fill, ...(stroke && { stroke, width: 1 }) })
  }

  /** Slanted lines in a rectangle: the side beyond a limit. */
  hatch(x: number, y: number, width: number, height: number): void {
    const lines: string[] = []
    for (let at = 3 - height; at < width; at += 3) {
      const [from, to] = [Math.max(0, at), Math.min(width, at + height)]
      if (to > from) lines.push(`M${x + from} ${y + height - (from - at)}L${x + to} ${y + height - (to - at)}`)
    }
    if (lines.length > 0) this.path(lines.join(''), { stroke: 'over', width: 0.6 })
  }
}
