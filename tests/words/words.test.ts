import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it, test } from 'vitest'
import { english, languages, read } from '../../lib/words/collect.ts'
import { keyOf } from '../../lib/words/key.ts'
import { labelWords, roleWords } from '../../lib/words/names.ts'
import { asLookup, asString, asTranslation, rewritten } from '../../lib/words/plugin.ts'
import { say } from '../../lib/words/say.ts'
import { textsOf } from '../../lib/words/texts.ts'
import { escaped } from './escaped.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))
const placeholders = (message: string): string[] => (message.match(/\$\d/g) ?? []).toSorted()
/** The space at both ends of a text. */
const ends = (text: string): string => `${/^\s*/.exec(text)?.[0]}|${/\s*$/.exec(text)?.[0]}`
const inside = (code: string) => `import { say } from './say.ts'\n${code}`

describe('message files', () => {
  const all = english()

  it('hold the English of the sources: run `npm run words` when this fails', () => {
    expect(read('en')).toEqual(all)
  })

  // A text without a translation is shown in English; complete.release.test.ts lists those.
  it.each(languages())('%s holds texts of the sources, with the same values, and no other', (language) => {
    const unlike = Object.entries(read(language)).filter(([key, { message }]) => {
      const text = all[key]?.message
      return text === undefined || !message.trim() || placeholders(message).join() !== placeholders(text).join()
    })
    expect(unlike).toEqual([])
  })

  it.each(['en', ...languages()])('%s has no two values side by side, which a browser takes for a name', (language) => {
    const bad = Object.values(read(language)).filter(({ message }) => /\$[\w@]+\$/.test(message))
    expect(bad).toEqual([])
  })

  it.each(languages())('%s begins and ends with space where English does', (language) => {
    const unlike = Object.entries(read(language)).filter(
      ([key, { message }]) => ends(message) !== ends(all[key]?.message ?? ''),
    )
    expect(unlike).toEqual([])
  })
})

/** Texts that bear no mark, by file, and why. */
const data: Record<string, { why: string; texts: readonly string[] }> = {
  'lib/view/dock/file-field.tsx': { why: 'the name of a file that goes into a form', texts: ['figures.csv'] },
  'lib/job/demo.ts': { why: 'data of an invented job', texts: ['Ines Halvorsen', 'Fan 2', 'wide', 'middle', 'narrow'] },
  'lib/job/material-test.ts': { why: 'kept in English; labelWords() shows it', texts: ['limit of …'] },
  'lib/job/together.ts': {
    why: 'keys of form maps; roleWords() shows them',
    texts: ['…, both directions', 'duct systems', 'duct systems from …'],
  },
  'lib/form/page/recognise.ts': { why: 'names of kinds of input', texts: ['text'] },
  'lib/view/practice/practice-form.tsx': { why: 'value of an attribute of HTML', texts: ['any'] },
  'lib/view/plot/plot-drawing.tsx': { why: 'symbol', texts: ['ΔP'] },
  'lib/book/backup.ts': { why: 'names of algorithms', texts: ['PBKDF2', 'AES-GCM'] },
  'lib/book/shelf/segment.ts': { why: 'names of algorithms', texts: ['ECDSA', 'P-256', 'SHA-256'] },
  'lib/book/hpxml/export.ts': {
    why: 'names of the HPXML standard',
    texts: ['FirstName', 'LastName', 'BusinessName', 'XMLType', 'XMLGeneratedBy', 'BuildingDetails'],
  },
}

test('no text that people read lacks its mark', () => {
  const tops = [
    'entrypoints',
    'lib/view',
    'lib/reduce',
    'lib/limits',
    'lib/job',
    'lib/form',
    'lib/book',
    'lib/units',
    'lib/widget',
  ]
  const found = tops.flatMap((top) =>
    readdirSync(join(root, top), { recursive: true, encoding: 'utf8' })
      .map((name) => `${top}/${name.replaceAll('\\', '/')}`)
      .filter((path) => /\.tsx?$/.test(path))
      .flatMap((path) =>
        escaped(readFileSync(join(root, path), 'utf8'), path)
          .filter((text) => !data[path]?.texts.includes(text))
          .map((text) => `${path}: ${text}`),
      ),
  )
  expect(found, 'Write say`…`, or name the text above with the reason why it is data.').toEqual([])
})

test('the search for unmarked texts finds them, in every place', () => {
  const source =
    "const text = 'One fault'; const a = { message: b ? `Two ${c}` : say`x` }; const d = <p title='Three'>Four {'five'}</p>"
  expect(escaped(source, 'a.tsx').toSorted()).toEqual(['Four', 'One fault', 'Three', 'Two …', 'five'])
  expect(escaped("const a = <p class='not read'>{say`read`} 12 Pa</p>", 'a.tsx')).toEqual([])
})

describe('texts in a source', () => {
  it('are made of their parts and values in English', () => {
    expect(say`${3} of ${'5'} points`).toBe('3 of 5 points')
    expect(say`none`).toBe('none')
  })

  it('are found with their values, one in another too', () => {
    const found = textsOf(inside('say`a ${b} c ${d ? say`e` : 1}`'), 'a.ts')
    expect(found.map(({ message }) => message)).toEqual(['a $1 c $2', 'e'])
  })

  it('become a lookup, or a string', () => {
    const code = inside('say`a \\`b\\` ${c ? say`d` : e} f`')
    expect(rewritten(code, 'a.ts', asLookup)).toContain(
      `say("${keyOf('a `b` $1 f')}", c ? /* @__PURE__ */ say("${keyOf('d')}") : e)`,
    )
    expect(rewritten(code, 'a.ts', asString)).toContain('`a \\`b\\` ${c ? "d" : e} f`')
  })

  it('become a string of another language, whose values may stand in another order', () => {
    const code = inside('say`${a} of ${b ? say`c` : 1} points`')
    const translations = {
      [keyOf('$1 of $2 points')]: { message: 'de $2 `puntos`, $1' },
      [keyOf('c')]: { message: 'see' },
    }
    expect(rewritten(code, 'a.ts', asTranslation(translations))).toContain('`de ${b ? "see" : 1} \\`puntos\\`, ${a}`')
    // A text without a translation stays English.
    expect(rewritten(code, 'a.ts', asTranslation({}))).toBe(rewritten(code, 'a.ts', asString))
  })

  it.each([
    ['say`costs $5`', 'holds a $'],
    ['say`${a}${b} c`', 'side by side'],
    ['say`${1} ${2} ${3} ${4} ${5} ${6} ${7} ${8} ${9} ${10} a`', 'more than 9'],
    ['say`a ${b}0`', 'a digit after'],
    ['say`12`', 'holds no word'],
  ])('%s is refused', (code, why) => {
    expect(() => textsOf(inside(code), 'a.ts')).toThrow(why)
  })
})

test('names that are kept in English are shown as they are where there is no message file', () => {
  for (const role of ['after', 'duct system 2', 'after, both directions', 'before and after', 'attic of Mr X'])
    expect(roleWords(role)).toBe(role)
  for (const label of [
    'floor area',
    'limit of ACH50',
    'reduction of CFM50',
    'uncertainty of the reduction of CFM50, 95 %',
  ])
    expect(labelWords(label)).toBe(label)
})
