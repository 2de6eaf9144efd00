/** Every @example of the arithmetic's doc comments is run: `expression // value`, on its own line or the next. */
import { readFileSync, readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import * as limits from '../../lib/limits/index.ts'

const lib = fileURLToPath(new URL('../../lib/', import.meta.url))

const sources = ['units', 'sheet', 'reduce', 'limits'].flatMap((folder) =>
  readdirSync(lib + folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => ({ file: `${folder}/${file}`, source: readFileSync(`${lib}${folder}/${file}`, 'utf8') })),
)

const examples = sources.flatMap(({ file, source }) =>
  [...source.matchAll(/@example\s+(?:\* )?(.+) \/\/ (.+)/g)].map(([, expression = '', value = '']) => ({
    file,
    expression,
    value,
  })),
)

const evaluate = (names: string[], values: unknown[], expression: string): unknown =>
  // oxlint-disable-next-line typescript/no-implied-eval -- runs the text of our own comments
  new Function(...names, `return (${expression})`)(...values)

test('there are examples', () => {
  expect(examples.length).toBeGreaterThan(20)
  const written = sources.flatMap(({ source }) => source.match(/@example/g) ?? [])
  expect(examples, 'an @example without “// value”').toHaveLength(written.length)
})

test.each(examples)('$file: $expression', async ({ file, expression, value }) => {
  const own = (await import(/* @vite-ignore */ `${lib}${file}`)) as Record<string, unknown>
  const module = file.startsWith('limits/') ? { ...limits, ...own } : own
  expect(evaluate(Object.keys(module), Object.values(module), expression)).toEqual(evaluate([], [], value))
})
