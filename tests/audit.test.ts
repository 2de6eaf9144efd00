/** Every figure and check has its source, its row in a table and its test, and no folder of lib knows one that it must not; each failure is a sentence. */
import { readFileSync, readdirSync } from 'node:fs'
import { posix } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { testCheckNames } from '../lib/job/checks.ts'
import { checks } from '../lib/reduce/checks/index.ts'
import { figures } from '../lib/reduce/figures/index.ts'
import { files, sourceIn, sourceOfCheck, written } from './readme.ts'

const at = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url))
const text = readFileSync(at('lib/reduce/README.md'), 'utf8')
const tests = readdirSync(at('tests'), { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.test.ts') && !file.startsWith('browser') && file !== 'audit.test.ts')
  .map((file) => readFileSync(at(`tests/${file}`), 'utf8'))
  .join('\n')

/** A source is a publication, physics, a certificate, or says that there is none. */
const isSource = (source: string | undefined) =>
  source !== undefined &&
  /ASTM|ISO|ANSI|ASHRAE|IECC|CGSB|JCGM|AIVC|Roulet|physics|gas law|conservation|certificate|common practice, no source/.test(
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
    [text.includes(`| \`${id}\` |`), `The ${what} ${id} has no row in lib/reduce/README.md: run npm run readme.`],
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

test.each(Object.keys(files))('the tables of %s are those of the code; else run npm run readme', (file) => {
  const now = readFileSync(at(file), 'utf8')
  expect(written(file, now)).toBe(now)
})

test('a source is read from the doc comment right before', () => {
  const code = '/**\n * Words. Source: ISO 9972\n * (from memory).\n */\nexport const one = 1\nexport const two = 2\n'
  expect(sourceIn(code, 'one')).toBe('ISO 9972 (from memory)')
  expect(sourceIn(code, 'two')).toBeUndefined()
  expect([isSource('a friend'), admits('ASTM E779'), admits('ASTM E779 (from memory)')]).toEqual([false, false, true])
})

/** What each folder of lib may know besides itself. */
const known: Record<string, readonly string[]> = {
  words: [],
  units: ['words'],
  sheet: [],
  limits: ['reduce', 'units', 'words'],
  reduce: ['sheet', 'units', 'words'],
  engine: ['limits', 'reduce', 'sheet', 'units'],
  form: ['units', 'words'],
  pdf: ['words'],
  job: ['form', 'limits', 'reduce', 'sheet', 'units', 'words'],
  results: ['form', 'job', 'limits', 'reduce', 'sheet', 'units', 'words'],
  book: ['engine', 'form', 'job', 'reduce', 'units', 'words'],
  report: ['book', 'form', 'job', 'limits', 'reduce', 'results', 'sheet', 'units', 'words'],
  messages: ['book', 'form', 'job'],
  extension: ['book', 'form', 'job', 'messages', 'report', 'words'],
  view: [
    'book',
    'engine',
    'extension',
    'form',
    'job',
    'limits',
    'messages',
    'pdf',
    'reduce',
    'report',
    'results',
    'sheet',
    'units',
    'words',
  ],
  widget: ['form', 'job', 'limits', 'reduce', 'results', 'sheet', 'units', 'view', 'words'],
  package: ['words'],
}

/** The same inside two folders of lib; what stands in `lib/form` itself is for all of it. */
const inside: Record<string, Record<string, readonly string[]>> = {
  form: {
    page: [],
    map: ['page'],
    kinds: ['page'],
    fill: ['kinds', 'map', 'page'],
  },
  view: {
    parts: [],
    figure: ['parts'],
    plot: ['figure', 'parts'],
    report: ['figure', 'parts', 'plot'],
    calculator: ['figure', 'paragraph', 'parts', 'plot'],
    paragraph: ['calculator', 'dock', 'parts'],
    practice: ['parts'],
    'pdf-form': ['helper', 'parts'],
    helper: [],
    dock: ['helper', 'parts'],
    book: ['calculator', 'parts', 'report'],
  },
}

/** What the files under `root` import of folders there that `may` does not list, one sentence each. */
function forbidden(root: string, may: Record<string, readonly string[]>): string[] {
  return readdirSync(at(root), { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => /\/.*\.tsx?$/.test(path))
    .flatMap((path) => {
      const [folder = ''] = path.split('/')
      const imports = readFileSync(at(`${root}/${path}`), 'utf8').matchAll(/\b(?:from|import\()\s*'(\.[^']+)'/g)
      return [...imports].flatMap(([, to = '']) => {
        const other = posix.join(posix.dirname(path), to)
        const [of = '', file] = other.split('/')
        // What stands in the root itself is for all of it; `..` is outside.
        if (file === undefined || of === '..' || of === folder || may[folder]?.includes(of)) return []
        return [`${root}/${path} imports ${root}/${other}: ${root}/${folder} must not know ${root}/${of}.`]
      })
    })
}

test('no folder of lib knows one that it must not', () => {
  expect([
    ...forbidden('lib', known),
    ...Object.entries(inside).flatMap(([folder, may]) => forbidden(`lib/${folder}`, may)),
  ]).toEqual([])
})
