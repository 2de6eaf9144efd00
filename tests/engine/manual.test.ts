/** The examples of the package's manual are run: `expression // value` has to come out as it says. */
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import * as engine from '../../lib/engine/index.ts'

const manual = readFileSync(new URL('../../lib/package/README.md', import.meta.url), 'utf8')
const blocks = [...manual.matchAll(/```js\n(import [^\n]* from 'gapsum\/engine'\n[\s\S]*?)```/g)].map(
  ([, code = '']) => code,
)

/** A block as a function body that collects what each of its lines comes to, beside what it should. */
const body = (code: string) =>
  code
    .replace(/^import \{ (.*) \} from 'gapsum\/engine'$/m, 'const { $1 } = engine')
    .replaceAll(/^(?!\s*\/\/)(?!const )(\S.*?) \/\/ (.+)$/gm, 'came.push([$1, $2])')

test('there are examples of the engine, and each says what comes out', () => {
  expect(blocks).toHaveLength(2)
  expect(blocks.flatMap((code) => body(code).match(/came\.push/g) ?? []).length).toBeGreaterThan(12)
})

test.each(blocks.map((code, at) => [at + 1, code] as const))('example %i of the engine', (_, code) => {
  const came: [unknown, unknown][] = []
  // oxlint-disable-next-line typescript/no-implied-eval -- runs our own manual
  new Function('engine', 'came', body(code))(engine, came)
  expect(came.length).toBeGreaterThan(1)
  for (const [found, said] of came) expect(found).toEqual(said)
})

test('every name that the manual imports is exported', () => {
  const names = [...manual.matchAll(/import \{ (.*) \} from 'gapsum\/engine'/g)].flatMap(([, all = '']) =>
    all.split(', '),
  )
  expect(names.filter((name) => !Object.hasOwn(engine, name))).toEqual([])
})
