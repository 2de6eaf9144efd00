/** Every @example of the engine's doc comments is run: `expression // value`. */
import { readFileSync, readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const lib = fileURLToPath(new URL('../../lib/', import.meta.url))

const examples = ['units', 'sheet', 'reduce'].flatMap((folder) =>
  readdirSync(lib + folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .flatMap((file) => {
      const source = readFileSync(`${lib}${folder}/${file}`, 'utf8')
      return [...source.matchAll(/@example (.+) \/\/ (.+)/g)].map(([, expression = '', value = '']) => ({
        file: `${folder}/${file}`,
        expression,
        value,
      }))
    }),
)

const evaluate = (names: string[], values: unknown[], expression: string): unknown =>
  // oxlint-disable-next-line typescript/no-implied-eval -- runs the text of our own comments
  new Function(...names, `return (${expression})`)(...values)

test('there are examples', () => {
  expect(examples.length).toBeGreaterThan(20)
})

test.each(examples)('$file: $expression', async ({ file, expression, value }) => {
  const module = (await import(/* @vite-ignore */ `${lib}${file}`)) as Record<string, unknown>
  expect(evaluate(Object.keys(module), Object.values(module), expression)).toEqual(evaluate([], [], value))
})
