const encoder = new TextEncoder()
let scratch = new Uint8Array(1 << 16)

/** A text in UTF-8, good until the next call: memory that is taken anew for each text keeps a browser busy clearing it. */
export function bytesOfText(text: string): Uint8Array<ArrayBuffer> {
  if (text.length * 3 > scratch.length) {
    if (text.length > 1_000_000) return encoder.encode(text)
    scratch = new Uint8Array(text.length * 4)
  }
  return scratch.subarray(0, encoder.encodeInto(text, scratch).written)
}
