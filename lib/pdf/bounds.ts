/** How much of a PDF is taken in. */
export const bounds = {
  /** Bytes of the file. */
  file: 50_000_000,
  /** Bytes of all streams together, unpacked, and of the longest. */
  unpacked: 400_000_000,
  stream: 100_000_000,
  pages: 300,
  /** Annotations of all kinds; mapping lists as many controls. */
  fields: 5000,
  /** Letters of a field's name, of a label, of a text. */
  name: 500,
  label: 200,
  text: 20_000,
  options: 1000,
  /** Pieces of text of a page that are looked at for labels. */
  pieces: 5000,
  /** Milliseconds that opening, reading a page's fields or saving may take. */
  patience: 20_000,
} as const
