/** A random id. `crypto.randomUUID` is missing on pages without https, where forms are filled too. */
export function newId(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => byte.toString(16).padStart(2, '0')).join('')
}
