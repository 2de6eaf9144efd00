import { bytesOfText } from './bytes-of-text.ts'

const hex = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'))

/** SHA-256 (FIPS 180-4) of bytes, or of a text as UTF-8, in hexadecimal. */
export async function sha256(data: string | BufferSource): Promise<string> {
  // The bytes are copied before the call returns (Web Cryptography API, the digest method).
  const bytes = typeof data === 'string' ? bytesOfText(data) : data
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  let text = ''
  for (const byte of digest) text += hex[byte]
  return text
}
