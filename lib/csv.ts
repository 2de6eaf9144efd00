/**
 * Tables for spreadsheets (RFC 4180): the one writer of the project. A spreadsheet runs a cell that begins with one of
 * = + - @, also in the wide forms of East Asian type and behind blanks or characters that are not seen; one that parts
 * cells by semicolons or tabs begins a cell after each. An apostrophe is put before such a cell, so that it stays a text;
 * a plain number with a minus sign is none. Source: OWASP, CSV Injection (from memory).
 */
/** Blanks and characters that are not seen, all of them up to what a spreadsheet would take for a formula. */
const upToFormula = /(?<![\s\p{C}])[\s\p{C}]*(?=[=+\-@＝＋－＠])/gu
const plainNumber = /-(?:\d+(?:[.,]\d+)?|[.,]\d+)\s*(?:$|;)/y

/** With an apostrophe before each cell that would be run. */
function guarded(text: string): string {
  const safe = text.replace(upToFormula, (run: string, at: number) => {
    plainNumber.lastIndex = at + run.length
    // With nothing but blanks before it a number may stand; what is not seen hides what follows from it.
    const most = plainNumber.test(text) ? run.trimEnd().length : Infinity
    const before = text.charAt(at - 1)
    let written = (at === 0 || before === ';') && most > 0 ? "'" : ''
    for (let place = 1; place <= run.length; place++) {
      written += run.charAt(place - 1)
      const behindTab = run.charAt(place - 1) === '\t' && /\S/.test(place > 1 ? run.charAt(place - 2) : before)
      if (behindTab && place < most) written += "'"
    }
    return written
  })
  return /^[\t\r\n]/.test(safe) ? `'${safe}` : safe
}

/**
 * One cell.
 * @example csvCell('-61.4') // '-61.4'
 * @example csvCell('=1+1') // "'=1+1"
 */
export function csvCell(value: string | number): string {
  const text = guarded(String(value))
  return /[",;\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/** Rows with their line ends. */
export const csvRows = (rows: readonly (readonly (string | number)[])[]): string =>
  rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('')
