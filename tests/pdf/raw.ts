/** PDF files written object by object (ISO 32000-1), for what no library writes: signed, looping, bursting, of another kind. */

const latin = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0))

export const joined = (...parts: (string | Uint8Array)[]): Uint8Array => {
  const all = parts.map((part) => (typeof part === 'string' ? latin(part) : part))
  const bytes = new Uint8Array(all.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const part of all) {
    bytes.set(part, at)
    at += part.length
  }
  return bytes
}

/** A stream object's text, with its length. */
export const stream = (bytes: Uint8Array | string, more = ''): Uint8Array => {
  const data = joined(bytes)
  return joined(`<< /Length ${data.length} ${more}>>\nstream\n`, data, '\nendstream')
}

/**
 * A file of objects 1, 2, 3, …; the first is the catalog.
 * @param trailer further entries of the trailer
 */
export function raw(objects: readonly (string | Uint8Array)[], trailer = ''): Uint8Array {
  const parts: Uint8Array[] = [latin('%PDF-1.7\n%\xe2\xe3\xcf\xd3\n')]
  const starts: number[] = []
  let at = parts[0]!.length
  for (const [index, object] of objects.entries()) {
    const part = joined(`${index + 1} 0 obj\n`, object, '\nendobj\n')
    starts.push(at)
    at += part.length
    parts.push(part)
  }
  const table = starts.map((start) => `${String(start).padStart(10, '0')} 00000 n \n`).join('')
  parts.push(
    latin(
      `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${table}trailer\n<< /Size ${objects.length + 1} /Root 1 0 R ${trailer}>>\nstartxref\n${at}\n%%EOF\n`,
    ),
  )
  return joined(...parts)
}

const font = '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>'

/** A form of one page with fields; `form` are further entries of the form, `catalog` of the catalog. */
export function rawForm(
  fields: readonly string[],
  {
    form = '',
    catalog = '',
    objects = [],
  }: { form?: string; catalog?: string; objects?: (string | Uint8Array)[] } = {},
): Uint8Array {
  const ids = fields.map((_, index) => `${6 + index} 0 R`).join(' ')
  return raw([
    `<< /Type /Catalog /Pages 2 0 R /AcroForm << /Fields [${ids}] /DA (/Helv 10 Tf 0 g) /DR << /Font << /Helv 5 0 R >> >> ${form}>> ${catalog}>>`,
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 4 0 R /Resources << /Font << /F 5 0 R >> >> /Annots [${ids}] >>`,
    stream('BT /F 12 Tf 54 740 Td (Form LC-7R) Tj ET BT /F 10 Tf 54 704 Td (Permit number) Tj ET'),
    font,
    ...fields,
    ...objects,
  ])
}

/** A text field as the form above takes it. */
export const textField = (name: string, y = 700, more = ''): string =>
  `<< /Type /Annot /Subtype /Widget /FT /Tx /T (${name}) /Rect [220 ${y} 400 ${y + 16}] /F 4 /P 3 0 R /DA (/Helv 10 Tf 0 g) ${more}>>`
