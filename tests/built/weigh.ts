/** What built files weigh. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'

const output = fileURLToPath(new URL('../../.output/', import.meta.url))

/** The text of a built file, by its path in .output. */
export function read(path: string): string {
  if (!existsSync(output + path)) throw new Error(`${path} is missing. Run npm run build before the tests.`)
  return readFileSync(output + path, 'utf8')
}

/**
 * What a page loads to open: its scripts, the part that they read after the first paint, and what those import, each once.
 * What is loaded later, when asked for, is not.
 */
export function scriptsOf(page: string): string[] {
  const queue = [...read(page).matchAll(/(?:src|href)="\/?([^"]+\.js)"/g)].map((match) => match[1] ?? '')
  const seen = new Set<string>()
  for (let path = queue.pop(); path !== undefined; path = queue.pop()) {
    if (seen.has(path)) continue
    seen.add(path)
    for (const [, needed, after] of read(`chrome-mv3/${path}`).matchAll(
      /(?:\bfrom|\bimport)\s*["'`](\.{1,2}\/[^"'`]+\.js)["'`]|\bimport\(["'`](\.\/main-[^"'`]+\.js)["'`]/g,
    ))
      queue.push(new URL(needed ?? after ?? '', `file:///${path}`).pathname.slice(1))
  }
  return [...seen]
}

/** Bytes after gzip. */
export const packed = (text: string): number => gzipSync(text, { level: 9 }).length

/** Bytes of the scripts that a page of the extension loads to open. */
export const weightOf = (page: string): number =>
  scriptsOf(page).reduce((sum, path) => sum + packed(read(`chrome-mv3/${path}`)), 0)

/** The two files of the PDF library: the one that draws is told by its own words. */
export function libraryParts(): { drawing: string; reading: string } {
  const chunks = readdirSync(`${output}chrome-mv3/chunks`).map((name) => `chrome-mv3/chunks/${name}`)
  const drawing = chunks.find((path) => path.endsWith('.js') && read(path).includes('AnnotationStorage'))
  const reading = readdirSync(`${output}chrome-mv3/assets`).find((name) => name.includes('pdf.worker'))
  if (drawing === undefined || reading === undefined) throw new Error('The PDF library is in no file of the build.')
  return { drawing, reading: `chrome-mv3/assets/${reading}` }
}
