/** Bytes as base 64 (RFC 4648) and back, by the platform's own functions where it has them. */
interface Native {
  toBase64?: () => string
}
const native = Uint8Array as { fromBase64?: (text: string) => Uint8Array<ArrayBuffer> }

export function toBase64(bytes: ArrayBuffer | Uint8Array): string {
  const all = bytes instanceof Uint8Array ? bytes : new Uint8Array(bytes)
  const own = all as Native
  if (own.toBase64) return own.toBase64()
  let text = ''
  // In pieces: a call takes only so many arguments.
  for (let at = 0; at < all.length; at += 0x8000) text += String.fromCharCode(...all.subarray(at, at + 0x8000))
  return btoa(text)
}

function bytesIn(binary: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(binary.length)
  for (let at = 0; at < binary.length; at++) bytes[at] = binary.charCodeAt(at)
  return bytes
}

/** The bytes, or undefined when the text is not exactly what `toBase64` writes. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | undefined {
  try {
    const bytes = native.fromBase64?.(text) ?? bytesIn(atob(text))
    return toBase64(bytes) === text ? bytes : undefined
  } catch {
    return undefined
  }
}
