/** Every figure and check has its source, its row in the README and its test; each failure is a sentence. */
import { readFileSync, readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { testCheckNames } from '../lib/job/checks.ts'
import { checks } from '../lib/reduce/checks/index.ts'
import { figures } from '../lib/reduce/figures/index.ts'
import { readme, sourceIn, sourceOfCheck } from './readme.ts'

const at = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url))
const text = readFileSync(at('README.md'), 'utf8')
const tests = readdirSync(at('tests'), { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.test.ts') && !file.startsWith('browser') && file !== 'audit.test.ts')
  .map((file) => readFileSync(at(`tests/${file}`), 'utf8'))
  .join('\n')

/** A source is a publication, physics, a certificate, or says that there is none. */
const isSource = (source: string | undefined) =>
  source !== undefined &&
  /ASTM|ISO|ANSI|ASHRAE|IECC|CGSB|JCGM|Roulet|physics|gas law|conservation|certificate|common practice, no source/.test(
    source,
  )

/** A standard that was not read in full says so. */
const admits = (source: string | undefined) =>
  !/ASTM|ISO \d|ANSI|ASHRAE|IECC|CGSB/.test(source ?? '') || /from memory/.test(source ?? '')

/** The sentences of what is not so. */
const said = (...found: [boolean, string][]): string[] => found.filter(([so]) => !so).map(([, sentence]) => sentence)

const common = (what: string, id: string, source: string | undefined) =>
  said(
    [isSource(source), `The ${what} ${id} lacks a source: name it, or say “common practice, no source”.`],
    [admits(source), `The ${what} ${id} does not say that its source is from memory.`],
    [text.includes(`| \`${id}\` |`), `The ${what} ${id} has no row in the README: run npm run readme.`],
    [tests.includes(`'${id}'`), `The ${what} ${id} is named in no test.`],
  )

const ofFigures = figures.flatMap(({ id, label, name, formula, source, decimals }) => {
  const whole = Boolean(label && name && formula) && Object.keys(decimals).length > 0
  return said([whole, `The figure ${id} lacks its label, name, formula or units.`]).concat(common('figure', id, source))
})

const ofChecks = [...checks.map(({ id }) => id), ...Object.keys(testCheckNames)].flatMap((id) =>
  common('check', id, sourceOfCheck(id)),
)

test('nothing lacks its source, its row or its test', () => {
  expect([...ofFigures, ...ofChecks]).toEqual([])
})

test('the tables of the README are those of the code; else run npm run readme', () => {
  expect(readme(text)).toBe(text)
})

test('a source is read from the doc comment right before', () => {
  const code = '/**\n * Words. Source: ISO 9972\n * (from memory).\n */\nexport const one = 1\nexport const two = 2\n'
  expect(sourceIn(code, 'one')).toBe('ISO 9972 (from memory)')
  expect(sourceIn(code, 'two')).toBeUndefined()
  expect([isSource('a friend'), admits('ASTM E779'), admits('ASTM E779 (from memory)')]).toEqual([false, false, true])
})
