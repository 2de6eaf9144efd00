/**
 * PDF forms of the invented Larch County, written with pdf-lib, one for each thing that forms differ in. With each goes
 * what a person would call its fields, in the order of `fields`.
 */
import {
  degrees,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  rgb,
  StandardFonts,
  type PDFFont,
  type PDFPage,
} from '@cantoo/pdf-lib'

/** What a person would call a field: its section and its name. */
export type Called = readonly [name: string, section: string]

export interface Form {
  bytes: Uint8Array
  /** By the field's full name. */
  called: Record<string, Called>
}

interface Pen {
  document: PDFDocument
  page: PDFPage
  font: PDFFont
  bold: PDFFont
}

const letter: [number, number] = [612, 792]

async function begin(): Promise<Pen> {
  const document = await PDFDocument.create()
  document.setTitle('Form LC-7P')
  document.setProducer('scripts of the tests')
  return {
    document,
    page: document.addPage(letter),
    font: await document.embedFont(StandardFonts.Helvetica),
    bold: await document.embedFont(StandardFonts.HelveticaBold),
  }
}

const write = ({ page, font }: Pen, words: string, x: number, y: number, size = 10) =>
  page.drawText(words, { x, y, size, font })
const head = ({ page, bold }: Pen, words: string, y: number) => page.drawText(words, { x: 54, y, size: 13, font: bold })

interface Box {
  x: number
  y: number
  width?: number
  height?: number
}

const ruled = { borderWidth: 0.5, borderColor: rgb(0.4, 0.4, 0.4) }

function text(pen: Pen, name: string, box: Box, tooltip?: string, page = pen.page) {
  const field = pen.document.getForm().createTextField(name)
  field.addToPage(page, { height: 16, width: 180, ...ruled, ...box, font: pen.font })
  if (tooltip !== undefined) tell(field.acroField.dict, tooltip)
  return field
}

const tell = (dict: PDFDict, words: string) => dict.set(PDFName.of('TU'), PDFHexString.fromText(words))

const fieldsOfSide = ['Date of test', 'CFM50', 'ACH50'] as const

/** Labels to the left, captions, tooltips on half of the fields, radios with odd export values, a list, a comment. */
export async function plainForm(): Promise<Form> {
  const pen = await begin()
  const form = pen.document.getForm()
  const called: Record<string, Called> = {}
  head(pen, 'Form LC-7P, air leakage of a dwelling', 740)
  head(pen, 'Part A. Building', 705)
  const line = (label: string, name: string, y: number, section: string, tooltip?: string) => {
    write(pen, label, 54, y + 4)
    const field = text(pen, name, { x: 220, y }, tooltip)
    called[name] = [tooltip ?? label, section]
    return field
  }
  line('Street address', 'Text1', 680, 'Part A. Building')
  line('Town', 'Text2', 656, 'Part A. Building')
  line('Permit number', 'Text3', 632, 'Part A. Building', 'Permit number')
  line('Conditioned volume, ft³', 'Text4', 608, 'Part A. Building')
  line('Floor area, ft²', 'Text5', 584, 'Part A. Building', 'Floor area, ft²')
  head(pen, 'Part B. Test after the work', 550)
  line('Date of test', 'Text6', 524, 'Part B. Test after the work')
  line('CFM50, whole number', 'Text7', 500, 'Part B. Test after the work')
  line('ACH50, two decimals', 'Text8', 476, 'Part B. Test after the work')
  write(pen, 'Direction', 54, 456)
  const direction = form.createDropdown('Dropdown1')
  direction.addOptions(['Depressurization', 'Pressurization'])
  direction.addToPage(pen.page, { x: 220, y: 452, width: 180, height: 16, ...ruled, font: pen.font })
  called['Dropdown1'] = ['Direction', 'Part B. Test after the work']
  write(pen, 'Result against the limit', 54, 432)
  const result = form.createRadioGroup('Group1')
  result.addOptionToPage('0', pen.page, { x: 220, y: 430, width: 12, height: 12 })
  write(pen, 'Pass', 238, 432)
  result.addOptionToPage('Choice_2', pen.page, { x: 290, y: 430, width: 12, height: 12 })
  write(pen, 'Fail', 308, 432)
  called['Group1'] = ['Result against the limit', 'Part B. Test after the work']
  const box = form.createCheckBox('Check Box1')
  box.addToPage(pen.page, { x: 220, y: 408, width: 12, height: 12 })
  write(pen, 'Mechanical ventilation is installed', 238, 410)
  called['Check Box1'] = ['Mechanical ventilation is installed', 'Part B. Test after the work']
  write(pen, 'Remarks', 54, 386)
  const remarks = text(pen, 'Text9', { x: 54, y: 320, width: 480, height: 60 })
  remarks.enableMultiline()
  remarks.setFontSize(10)
  called['Text9'] = ['Remarks', 'Part B. Test after the work']
  head(pen, 'Part C. Tester', 290)
  line('Tester’s name', 'Text10', 264, 'Part C. Tester')
  line('Company', 'Text11', 240, 'Part C. Tester')
  line('Licence number', 'Text12', 216, 'Part C. Tester')
  return { bytes: await pen.document.save({ useObjectStreams: false }), called }
}

/** A ruled table: rows of readings, columns before and after; no tooltips. */
export async function tableForm(): Promise<Form> {
  const pen = await begin()
  const called: Record<string, Called> = {}
  head(pen, 'Form LC-7T, before and after', 740)
  const rows = [...fieldsOfSide, 'Outdoor temperature, °F']
  const columns = ['Before work', 'After work']
  columns.forEach((column, at) => write(pen, column, 230 + at * 150, 700))
  rows.forEach((row, down) => {
    const y = 672 - down * 24
    write(pen, row, 60, y + 5)
    columns.forEach((column, at) => {
      const name = `f1_${down * 2 + at + 1}[0]`
      text(pen, name, { x: 225 + at * 150, y, width: 140, height: 18 })
      called[name] = [row, column]
    })
    pen.page.drawLine({ start: { x: 54, y: y - 3 }, end: { x: 520, y: y - 3 }, thickness: 0.5 })
  })
  return { bytes: await pen.document.save(), called }
}

/** Labels above the fields, a comb, a date in small boxes, and labels below a line as on paper. */
export async function combForm(): Promise<Form> {
  const pen = await begin()
  const called: Record<string, Called> = {}
  const over = (label: string, name: string, x: number, y: number, width: number) => {
    write(pen, label, x, y + 22, 8)
    called[name] = [label, '']
    return text(pen, name, { x, y, width, height: 18 })
  }
  over('Street address', 'a1', 54, 700, 300)
  over('Permit number', 'a2', 370, 700, 180)
  const code = over('Program number', 'a3', 54, 650, 300)
  code.setMaxLength(14)
  code.enableCombing()
  over('Town', 'a4', 370, 650, 180)
  const below = (label: string, name: string, x: number, y: number, width: number) => {
    text(pen, name, { x, y, width, height: 18 })
    pen.page.drawLine({ start: { x, y }, end: { x: x + width, y }, thickness: 0.5 })
    write(pen, label, x, y - 10, 7)
    called[name] = [label, '']
  }
  below('Tester’s name', 'b1', 54, 580, 220)
  below('Licence number', 'b2', 300, 580, 220)
  return { bytes: await pen.document.save(), called }
}

/** The same field on two pages, and a page that is turned by a quarter. */
export async function twoPages(): Promise<Form> {
  const pen = await begin()
  write(pen, 'Permit number', 54, 704)
  const permit = text(pen, 'permit', { x: 220, y: 700 })
  write(pen, 'Street address', 54, 680)
  text(pen, 'street', { x: 220, y: 676 })
  const second = pen.document.addPage(letter)
  second.setRotation(degrees(90))
  // Turned, so that it reads upright: lines run up the page.
  second.drawText('Permit number', { x: 100, y: 60, size: 10, font: pen.font, rotate: degrees(90) })
  permit.addToPage(second, { x: 88, y: 180, width: 16, height: 180, ...ruled, font: pen.font })
  second.drawText('CFM50', { x: 140, y: 60, size: 10, font: pen.font, rotate: degrees(90) })
  text(pen, 'cfm', { x: 128, y: 180, width: 16, height: 180 }, undefined, second)
  return {
    bytes: await pen.document.save(),
    called: { permit: ['Permit number', ''], street: ['Street address', ''], cfm: ['CFM50', ''] },
  }
}

/** So many fields on so many pages, as a long form has them. */
export async function longForm(pages = 10, each = 40): Promise<Form> {
  const pen = await begin()
  const called: Record<string, Called> = {}
  for (let at = 0; at < pages; at++) {
    if (at > 0) pen.page = pen.document.addPage(letter)
    for (let row = 0; row < each; row++) {
      const x = row % 2 === 0 ? 54 : 320
      const y = 740 - Math.floor(row / 2) * 34
      const name = `p${at}.r${row}`
      const label = `Reading ${at * each + row + 1}`
      write(pen, label, x, y + 4)
      text(pen, name, { x: x + 80, y, width: 140 })
      called[name] = [label, '']
    }
  }
  return { bytes: await pen.document.save(), called }
}

/** Words and lines, and not one field. */
export async function flatForm(): Promise<Form> {
  const pen = await begin()
  head(pen, 'Form LC-7F, by hand', 740)
  const labels = ['Street address', 'Permit number', 'CFM50', 'ACH50']
  labels.forEach((label, at) => {
    const y = 700 - at * 30
    write(pen, label, 54, y)
    pen.page.drawLine({ start: { x: 200, y: y - 2 }, end: { x: 420, y: y - 2 }, thickness: 0.5 })
  })
  return { bytes: await pen.document.save(), called: {} }
}
