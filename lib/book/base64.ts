/** Bytes as base 64 (RFC 4648) and back. */
export function toBase64(bytes: ArrayBuffer | Uint8Array): string {
  const all = bytes instanceof Uint8Array ? bytes : new Uint8Array(bytes)
  let text = ''
  // In pieces: a call takes only so many arguments.
  for (let at = 0; at < all.length; at += 0x8000) text += String.fromCharCode(...all.subarray(at, at + 0x8000))
  return btoa(text)
}

/** The bytes, or undefined when the text is not exactly what `toBase64` writes. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | undefined {
  try {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0))
    return toBase64(bytes) === text ? bytes : undefined
  } catch {
    return undefined
  }
}
