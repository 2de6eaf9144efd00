import { describe, expect, test } from 'vitest'
import { openBookFile } from '../../lib/book/json.ts'
import { planImport } from '../../lib/book/import.ts'
import { parseJson } from '../../lib/book/parse-json.ts'
import { generator } from '../random.ts'
import './fresh.ts'

/** As deep as asked, of lists and objects in turns. */
const deep = (depth: number): unknown =>
  depth === 0 ? '"[{\\' : depth % 2 ? [deep(depth - 1)] : { a: deep(depth - 1) }

describe('JSON out of a file', () => {
  test('is read as the platform reads it, whatever stands in its strings', () => {
    const random = generator(5)
    const marks = ['"', '\\', '[', '{', ']', '}', 'x', '\n', 'é', ',']
    for (let sample = 0; sample < 300; sample++) {
      const text = Array.from({ length: 200 }, () => marks[Math.floor(random() * marks.length)]).join('')
      const value = { [text]: [text, { text }] }
      expect(parseJson(JSON.stringify(value))).toEqual(value)
    }
    const value = deep(90)
    expect(parseJson(JSON.stringify(value))).toEqual(value)
    expect(() => parseJson('{"a":')).toThrow(SyntaxError)
    expect(() => parseJson('"a')).toThrow(SyntaxError)
  })

  test('is refused where brackets stand deeper than in any record', () => {
    expect(() => parseJson(JSON.stringify(deep(120)))).toThrow(/too deep/)
    expect(() => parseJson('['.repeat(1e6))).toThrow(/too deep/)
    expect(() => parseJson(`[[]]${'{"a":'.repeat(1e6)}`)).toThrow(/too deep/)
  })

  test('50 MB of a bracket: the book says at once that it is no file of its own', async () => {
    const start = performance.now()
    await expect((async () => planImport(await openBookFile(new Blob(['['.repeat(5e7)]))))()).rejects.toThrow(
      /^Line 1 of the file is not the beginning of a book file/,
    )
    // The platform's own parser takes 30 s over it in the same program.
    expect(performance.now() - start).toBeLessThan(10_000)
  })
})
