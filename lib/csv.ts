/**
 * Tables for spreadsheets (RFC 4180): the one writer of the project. A spreadsheet runs a cell that begins with one of
 * = + - @, also in the wide forms of East Asian type and behind blanks or characters that are not seen; one that parts
 * cells by semicolons or tabs begins a cell after each. An apostrophe is put before such a cell, so that it stays a text;
 * a plain number with a minus sign is none. Source: OWASP, CSV Injection (from memory).
 */
const formula = /^(?=[\t\r\n])|(?<=^|;|\S\t)(?=[\s\p{C}]*[=+\-@＝＋－＠])(?!\s*-\d*[.,]?\d+\s*(?:$|;))/gu

/**
 * One cell.
 * @example csvCell('-61.4') // '-61.4'
 * @example csvCell('=1+1') // "'=1+1"
 */
export function csvCell(value: string | number): string {
  const text = String(value).replace(formula, "'")
  return /[",;\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/** Rows with their line ends. */
export const csvRows = (rows: readonly (readonly (string | number)[])[]): string =>
  rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('')
