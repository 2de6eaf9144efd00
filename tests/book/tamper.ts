/** Changes to files, and what a reader says of them. */
import { planImport } from '../../lib/book/import.ts'
import { openBookFile } from '../../lib/book/json.ts'
import { BookError } from '../../lib/book/error.ts'

/** The file with one bit turned over. */
export function turned(bytes: Uint8Array, bit: number): Uint8Array<ArrayBuffer> {
  const changed = Uint8Array.from(bytes)
  changed[bit >> 3]! ^= 1 << (bit & 7)
  return changed
}

/** The line that a place in the file stands on; a line break ends its line. */
export const lineAt = (bytes: Uint8Array, place: number): number =>
  bytes.subarray(0, place).reduce((line, byte) => (byte === 10 ? line + 1 : line), 1)

/** What a reader of book files refuses with, or undefined when it takes the file. */
export async function refusal(bytes: Uint8Array<ArrayBuffer>): Promise<BookError | undefined> {
  try {
    await planImport(await openBookFile(new Blob([bytes])))
    return undefined
  } catch (error) {
    if (error instanceof BookError) return error
    throw error
  }
}

/** The line that a refusal names; a file whose first byte was changed may look like one of another version. */
export const lineNamed = (error: BookError): number =>
  Number(/^line (\d+)/.exec(error.problems[0]?.path ?? '')?.[1] ?? 1)
