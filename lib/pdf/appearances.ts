/**
 * A form may say that its viewer is to draw what its fields hold (`/NeedAppearances true`). The library then writes no
 * drawing of its own, and a viewer that does not heed it shows nothing. While the form is open that entry has another
 * name of the same length, so that drawings are written; in the saved file it stands again as it was.
 */
const from = 'NeedAppearances'
const to = 'HadsAppearances'

/** Renames the key in a stretch of the bytes; gives back whether it stood there. */
function rename(bytes: Uint8Array, before: string, after: string): boolean {
  const key = new TextEncoder().encode(`/${before}`)
  let found = false
  for (let at = bytes.indexOf(key[0]!); at >= 0; at = bytes.indexOf(key[0]!, at + 1)) {
    if (!key.every((byte, index) => bytes[at + index] === byte)) continue
    bytes.set(new TextEncoder().encode(after), at + 1)
    found = true
  }
  return found
}

const holds = (bytes: Uint8Array, name: string): boolean => new TextDecoder('latin1').decode(bytes).includes(`/${name}`)

/** The bytes to open. */
export function toOpen(bytes: Uint8Array): Uint8Array {
  const copy = bytes.slice()
  return rename(copy, from, to) ? copy : bytes
}

/**
 * The bytes to keep.
 * @param length of the file that was opened: what the library added stands behind it
 */
export function toKeep(bytes: Uint8Array, length: number): Uint8Array {
  const copy = bytes.slice()
  rename(copy.subarray(0, length), to, from)
  // Where the library lacks letters it sets the entry itself.
  const added = copy.subarray(length)
  if (!holds(added, from)) rename(added, to, from)
  return copy
}
