/** Lines of the second copy: a checksum, a space, and JSON. */
import { bytesOfText } from '../bytes-of-text.ts'

const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xed_b8_83_20 : sum >>> 1
  return sum
})

/**
 * CRC-32 of a text in UTF-8, as eight hexadecimal digits. Computed at once and not by WebCrypto: a popup that closes
 * waits for nothing. Source: IEEE 802.3, the check value of "123456789" is cbf43926 (from memory).
 */
export function checksum(text: string): string {
  let sum = 0xff_ff_ff_ff
  const bytes = bytesOfText(text)
  for (let at = 0; at < bytes.length; at++) sum = (sum >>> 8) ^ table[(sum ^ bytes[at]!) & 0xff]!
  return (~sum >>> 0).toString(16).padStart(8, '0')
}

export function toLine(value: unknown): string {
  const json = JSON.stringify(value)
  return `${checksum(json)} ${json}`
}

/** What a line holds, or undefined when it is not as it was written. */
export function fromLine(line: unknown): unknown {
  if (typeof line !== 'string') return undefined
  const json = line.slice(9)
  return line.startsWith(`${checksum(json)} `) ? (JSON.parse(json) as unknown) : undefined
}
